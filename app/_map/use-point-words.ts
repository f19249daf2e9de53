import type L from 'leaflet'
import { useEffect, useRef, type RefObject } from 'react'
import type { Point } from '@/lib/geo'

/** Keeps the words for the point under the pointer in an element, without rendering. */
export function usePointWords(map: L.Map, words: ((point: Point) => string) | undefined): RefObject<HTMLOutputElement | null> {
  const element = useRef<HTMLOutputElement>(null)
  useEffect(() => {
    if (!words) return
    const show = ({ latlng }: L.LeafletMouseEvent) => {
      if (element.current) element.current.textContent = words({ lat: latlng.lat, lon: latlng.lng })
    }
    const hide = () => {
      if (element.current) element.current.textContent = ''
    }
    map.on('mousemove', show)
    map.on('mouseout', hide)
    return () => {
      map.off('mousemove', show)
      map.off('mouseout', hide)
    }
  }, [map, words])
  return element
}
