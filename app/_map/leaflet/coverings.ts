import type L from 'leaflet'
import type { Box } from '../crowded-names'

/** What lies over a map, its buttons say, in pixels of the map's layers. */
export function coveringsOf(map: L.Map): Box[] {
  const container = map.getContainer()
  const { left, top } = container.getBoundingClientRect()
  return [...(container.parentElement?.querySelectorAll('[data-over-map], .leaflet-control-scale') ?? [])].map((element) => {
    const rect = element.getBoundingClientRect()
    const from = map.containerPointToLayerPoint([rect.left - left, rect.top - top])
    return { left: from.x, top: from.y, right: from.x + rect.width, bottom: from.y + rect.height }
  })
}
