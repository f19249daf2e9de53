import type { RawFeature, RawTile } from 'geojson-vt'
import { roadLayers, type DrawnFeature, type MapLayer } from '@/lib/osm'
import { TILE_EXTENT } from '../drawn-district'
import type { Palette } from './palette'
import type { Pen } from './pen'
import { findRoadStyle } from './road-style'

const BUILDINGS_FROM_ZOOM = 14
const BRIDGES_FROM_ZOOM = 13
const SOURCES_FROM_ZOOM = 14
const streamWidths: Readonly<Record<string, number>> = { river: 2.2, canal: 1.8, stream: 1.1 }

/**
 * Draws one tile: water, buildings, then roads from the least to the most important, all
 * edges before all fillings so that crossings join; bridges with a strong edge, for their
 * postings matter; and where the data says water may be had.
 *
 * @param size_px edge of the tile in pixels of the style, whatever the screen's ratio
 */
export function drawTile(context: Pen, tile: RawTile, zoom: number, size_px: number, palette: Palette): void {
  const scale = size_px / TILE_EXTENT
  context.lineJoin = 'round'
  context.lineCap = 'round'
  const byLayer = new Map<MapLayer, RawFeature[]>()
  for (const feature of tile.features) {
    const { layer } = propertiesOf(feature)
    const own = byLayer.get(layer)
    if (own) own.push(feature)
    else byLayer.set(layer, [feature])
  }
  const of = (layer: MapLayer) => byLayer.get(layer) ?? []
  drawWater(context, of('water'), of('waterway'), zoom, scale, palette)
  if (zoom >= BUILDINGS_FROM_ZOOM) fillAreas(context, of('building'), scale, palette.building)
  drawRoads(context, of, zoom, scale, palette)
  if (zoom >= SOURCES_FROM_ZOOM) drawSources(context, of('source'), scale, palette)
}

const propertiesOf = (feature: RawFeature): DrawnFeature['properties'] => feature.tags as DrawnFeature['properties']

function drawWater(context: Pen, areas: RawFeature[], streams: RawFeature[], zoom: number, scale: number, palette: Palette): void {
  context.strokeStyle = palette.waterEdge
  for (const [name, width] of Object.entries(streamWidths)) {
    const own = streams.filter((feature) => (propertiesOf(feature).kind in streamWidths ? propertiesOf(feature).kind : 'stream') === name)
    context.lineWidth = Math.max(0.6, width * 1.22 ** (zoom - 13))
    strokeLines(context, own, scale)
  }
  fillAreas(context, areas, scale, palette.waterFill)
  context.lineWidth = zoom >= 13 ? 1.2 : 0.8
  strokeLines(context, areas, scale)
}

function drawRoads(context: Pen, of: (layer: MapLayer) => RawFeature[], zoom: number, scale: number, palette: Palette): void {
  const styled = roadLayers.flatMap((layer) => {
    const style = findRoadStyle(layer, zoom)
    const own = of(layer)
    return style && own.length > 0 ? [{ layer, style, own }] : []
  })
  context.strokeStyle = palette.casing
  for (const { style, own } of styled) {
    if (style.casing_px === 0) continue
    context.lineWidth = style.casing_px
    strokeLines(context, own, scale)
  }
  if (zoom >= BRIDGES_FROM_ZOOM) {
    context.strokeStyle = palette.labelStrong
    context.lineCap = 'butt'
    for (const { style, own } of styled) {
      context.lineWidth = style.width_px + 4
      strokeLines(context, own.filter((feature) => propertiesOf(feature).kind === 'bridge'), scale)
    }
  }
  for (const { layer, style, own } of styled) {
    context.strokeStyle = style.casing_px === 0 ? palette.track : layer === 'majorRoad' || layer === 'mainRoad' ? palette.roadMain : palette.road
    context.lineCap = style.dash ? 'butt' : 'round'
    context.lineWidth = style.width_px
    context.setLineDash(style.dash ? [...style.dash] : [])
    strokeLines(context, own, scale)
  }
  context.setLineDash([])
}

function drawSources(context: Pen, sources: readonly RawFeature[], scale: number, palette: Palette): void {
  context.fillStyle = palette.ground
  context.strokeStyle = palette.loaded
  context.lineWidth = 2
  for (const source of sources) {
    if (source.type !== 4) continue
    context.beginPath()
    context.arc(source.x * scale, source.y * scale, 4, 0, 2 * Math.PI)
    context.fill()
    context.stroke()
  }
}

function fillAreas(context: Pen, features: readonly RawFeature[], scale: number, colour: string): void {
  if (features.length === 0) return
  context.fillStyle = colour
  context.beginPath()
  for (const feature of features) if (feature.type === 3) for (const ring of feature.geometry) trace(context, ring, scale, true)
  context.fill('evenodd')
}

function strokeLines(context: Pen, features: readonly RawFeature[], scale: number): void {
  if (features.length === 0) return
  context.beginPath()
  for (const feature of features) if (feature.type === 2 || feature.type === 3) for (const line of feature.geometry) trace(context, line, scale, feature.type === 3)
  context.stroke()
}

function trace(context: Pen, line: Int16Array | Int32Array, scale: number, isClosed: boolean): void {
  for (let i = 0; i + 1 < line.length; i += 2) {
    const x = (line[i] ?? 0) * scale
    const y = (line[i + 1] ?? 0) * scale
    if (i === 0) context.moveTo(x, y)
    else context.lineTo(x, y)
  }
  if (isClosed) context.closePath()
}
