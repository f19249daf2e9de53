import type L from 'leaflet'
import { useCallback, useEffect, useRef } from 'react'
import { ScreenCanvas } from './leaflet/screen-canvas'
import styles from './map.module.css'
import type { MapRoute } from './map-types'
import { drawRoutes } from './paint/draw-routes'
import { readPalette, watchPalette } from './paint/palette'

/**
 * Draws the ways over the ground.
 *
 * @returns draws others in their place from the next frame on, without rendering: for a drag
 */
export function useRoutes(map: L.Map | undefined, routes: readonly MapRoute[]): (other: readonly MapRoute[] | undefined) => void {
  const given = useRef(routes)
  const other = useRef<readonly MapRoute[] | undefined>(undefined)
  const layer = useRef<ScreenCanvas | undefined>(undefined)

  useEffect(() => {
    if (!map) return
    let palette = readPalette(map.getContainer())
    const canvas = new ScreenCanvas('overlayPane', styles.canvas ?? '', (frame) => drawRoutes(frame, other.current ?? given.current, palette))
    canvas.addTo(map)
    layer.current = canvas
    const stop = watchPalette(() => {
      palette = readPalette(map.getContainer())
      canvas.drawSoon()
    })
    return () => {
      stop()
      canvas.remove()
      layer.current = undefined
    }
  }, [map])

  useEffect(() => {
    given.current = routes
    layer.current?.drawSoon()
  }, [routes])

  return useCallback((drawn) => {
    other.current = drawn
    layer.current?.drawSoon()
  }, [])
}
