import type L from 'leaflet'
import { useEffect, useRef } from 'react'
import type { DrawnDistrict } from './drawn-district'
import type { DrawnGround } from './drawn-ground'
import { DistrictTiles } from './leaflet/district-tiles'
import { ScreenCanvas } from './leaflet/screen-canvas'
import type { SiteMarkers } from './leaflet/site-markers'
import styles from './map.module.css'
import { drawGraticule } from './paint/draw-graticule'
import { drawLabels } from './paint/draw-labels'
import { readPalette, watchPalette } from './paint/palette'

/**
 * Puts the district and its names on the map, over its ground where that is shown, or a bare grid; drawn again when the colours change.
 *
 * @param markers the symbols, under which no name is written
 */
export function useDistrictLayers(map: L.Map | undefined, markers: SiteMarkers | undefined, district: DrawnDistrict | undefined, ground: DrawnGround | undefined): void {
  const shown = useRef(ground)
  const layers = useRef<{ tiles: DistrictTiles | undefined; over: ScreenCanvas }>(undefined)
  useEffect(() => {
    if (!map) return
    const container = map.getContainer()
    let palette = readPalette(container)
    const tiles = district && new DistrictTiles(district, palette)
    tiles?.setGround(shown.current)
    const over = new ScreenCanvas(namesPane(map), styles.canvas ?? '', (frame) =>
      district ? drawLabels(frame, shown.current ? [...district.labels, ...shown.current.labels] : district.labels, palette, markers?.taken()) : drawGraticule(frame, palette),
    )
    tiles?.addTo(map)
    over.addTo(map)
    layers.current = { tiles, over }
    const repaint = () => {
      palette = readPalette(container)
      tiles?.setPalette(palette)
      over.drawSoon()
    }
    const stop = watchPalette(repaint)
    markers?.onTaken(() => over.drawSoon())
    let isGone = false
    // Names drawn before the typeface has come are drawn again in it.
    void document.fonts.ready.then(() => !isGone && over.drawSoon())
    return () => {
      isGone = true
      layers.current = undefined
      stop()
      markers?.onTaken(undefined)
      over.remove()
      tiles?.remove()
    }
  }, [map, markers, district])

  useEffect(() => {
    shown.current = ground
    layers.current?.tiles?.setGround(ground)
    layers.current?.over.drawSoon()
  }, [ground])
}

/** Names lie over the ground and the ways, so that both are read, and under the symbols. */
function namesPane(map: L.Map): string {
  const name = 'names'
  const pane = map.getPane(name) ?? map.createPane(name)
  pane.style.zIndex = '450'
  pane.style.pointerEvents = 'none'
  return name
}
