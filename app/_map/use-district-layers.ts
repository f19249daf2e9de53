import type L from 'leaflet'
import { useEffect } from 'react'
import type { DrawnDistrict } from './drawn-district'
import { DistrictTiles } from './leaflet/district-tiles'
import { ScreenCanvas } from './leaflet/screen-canvas'
import styles from './map.module.css'
import { drawGraticule } from './paint/draw-graticule'
import { drawLabels } from './paint/draw-labels'
import { readPalette, watchPalette } from './paint/palette'

/** Puts the ground on the map: the district and its names, or a bare grid; drawn again when the colours change. */
export function useDistrictLayers(map: L.Map | undefined, district: DrawnDistrict | undefined): void {
  useEffect(() => {
    if (!map) return
    const container = map.getContainer()
    let palette = readPalette(container)
    const tiles = district && new DistrictTiles(district, palette)
    const over = new ScreenCanvas(namesPane(map), styles.canvas ?? '', (frame) =>
      district ? drawLabels(frame, district.labels, palette) : drawGraticule(frame, palette),
    )
    tiles?.addTo(map)
    over.addTo(map)
    const repaint = () => {
      palette = readPalette(container)
      tiles?.setPalette(palette)
      over.drawSoon()
    }
    const stop = watchPalette(repaint)
    let isGone = false
    // Names drawn before the typeface has come are drawn again in it.
    void document.fonts.ready.then(() => !isGone && over.drawSoon())
    return () => {
      isGone = true
      stop()
      over.remove()
      tiles?.remove()
    }
  }, [map, district])
}

/** Names lie over the ground and the ways, so that both are read, and under the symbols. */
function namesPane(map: L.Map): string {
  const name = 'names'
  const pane = map.getPane(name) ?? map.createPane(name)
  pane.style.zIndex = '450'
  pane.style.pointerEvents = 'none'
  return name
}
