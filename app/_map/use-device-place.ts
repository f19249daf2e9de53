import L from 'leaflet'
import { useCallback, useEffect, useRef, useState } from 'react'
import type { Point } from '@/lib/geo'
import styles from './map.module.css'

export type DevicePlace =
  | { kind: 'none' | 'asking' }
  | { kind: 'failed'; why: 'denied' | 'unavailable' | 'timeout' }
  | { kind: 'found'; accuracy_m: number }

const whyOfCode: Readonly<Record<number, 'denied' | 'unavailable' | 'timeout'>> = { 1: 'denied', 2: 'unavailable', 3: 'timeout' }

/** Finds where this device is when asked, shows it, and says in a sentence when it cannot. */
export function useDevicePlace(map: L.Map, found?: (point: Point, accuracy_m: number) => void) {
  const [state, setState] = useState<DevicePlace>({ kind: 'none' })
  const layer = useRef<L.LayerGroup | undefined>(undefined)
  useEffect(() => () => void layer.current?.remove(), [map])

  const locate = useCallback(() => {
    setState({ kind: 'asking' })
    navigator.geolocation.getCurrentPosition(
      ({ coords: { latitude, longitude, accuracy } }) => {
        layer.current?.remove()
        const place: L.LatLngTuple = [latitude, longitude]
        const dot = L.divIcon({ className: styles.device ?? '', iconSize: [18, 18] })
        layer.current = L.layerGroup([
          L.circle(place, { radius: accuracy, className: styles.doubt ?? '', interactive: false }),
          L.marker(place, { icon: dot, interactive: false, keyboard: false }),
        ]).addTo(map)
        map.setView(place, Math.max(map.getZoom(), 15))
        setState({ kind: 'found', accuracy_m: accuracy })
        found?.({ lat: latitude, lon: longitude }, accuracy)
      },
      ({ code }) => setState({ kind: 'failed', why: whyOfCode[code] ?? 'unavailable' }),
      { enableHighAccuracy: true, timeout: 20_000, maximumAge: 10_000 },
    )
  }, [map, found])

  const dismiss = useCallback(() => setState({ kind: 'none' }), [])
  // Pages that are not served securely have no geolocation that works.
  const canLocate = 'geolocation' in navigator && isSecureContext
  return { canLocate, state, locate, dismiss }
}
