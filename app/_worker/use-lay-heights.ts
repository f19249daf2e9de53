'use client'

import { useEffect, useMemo, useState } from 'react'
import { isCounted, type District, type GroundHeights, type Plan } from '@/lib/plan'
import { layHeightsKey } from '@/lib/supply'
import { getGround } from './ground/get-ground'

const none: readonly GroundHeights[] = []

/**
 * The ground under the hose lays that count in a plan, for its bundle.
 *
 * @returns the same list until a lay's way or the elevation changes; undefined while it is read
 */
export function useLayHeights(district: District | undefined, plan: Plan | undefined): readonly GroundHeights[] | undefined {
  const lays = plan?.hoseLays
  const asked = useMemo(() => {
    const counted = (lays ?? []).filter((lay) => isCounted(lay) && (district?.terrain ?? (lay.standsOnRoads && district?.roads)))
    return district && counted.length > 0 ? { district, lays: counted } : undefined
  }, [district, lays])
  const key = asked ? asked.lays.map((lay) => layHeightsKey(asked.district, lay)).join(' ') : ''
  const [found, setFound] = useState<{ key: string; heights: readonly GroundHeights[] }>()
  useEffect(() => {
    if (key === '' || !asked) return
    let isGone = false
    const keep = (heights: readonly GroundHeights[]) => { if (!isGone) setFound((before) => (before?.key === key ? before : { key, heights })) }
    getGround().layHeights(asked.district, asked.lays).then(keep, () => { keep(none) })
    return () => { isGone = true }
  }, [key, asked])
  if (key === '') return none
  return found?.key === key ? found.heights : undefined
}
