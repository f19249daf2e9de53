'use client'

import { useEffect } from 'react'
import { useOfflineShell } from './use-offline-shell'

/** The screen comes first; then what it may need at the pond. */
const WAIT_MS = 4000

/** Brings the open district whole to this device, in the background, once the app itself is here. */
export function useKeptDistrict(districtId: string | undefined): void {
  const isReady = useOfflineShell() === 'ready'
  useEffect(() => {
    if (!isReady || districtId === undefined) return
    // Failing is no news: it is tried again with the next screen, and the device's page says what is here.
    const timer = setTimeout(() => void import('./keep-district').then(({ keepDistrict }) => keepDistrict(districtId)).catch(() => undefined), WAIT_MS)
    return () => { clearTimeout(timer) }
  }, [isReady, districtId])
}
