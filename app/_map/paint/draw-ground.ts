import { mercatorLine } from '../mercator'
import { TILE_EXTENT } from '../drawn-district'
import type { DrawnGround } from '../drawn-ground'
import type { Palette } from './palette'
import type { Pen } from './pen'

/** How much of full black or white the shade may be: so little that every name on it keeps its contrast. */
export const SHADE_STRENGTH = 0.13

/** Draws the ground of one tile under everything else: its shade, then the lines of equal height. */
export function drawGround(context: Pen, ground: DrawnGround, { x, y, z }: { x: number; y: number; z: number }, size_px: number, palette: Palette): void {
  drawShade(context, ground, { x, y, z }, size_px)
  const tile = ground.lines.getTileRaw(z, x, y)
  if (!tile) return
  const scale = size_px / TILE_EXTENT
  context.strokeStyle = palette.contour
  context.lineWidth = 0.8
  context.lineJoin = 'round'
  context.beginPath()
  for (const feature of tile.features) {
    if (feature.type !== 2) continue
    for (const line of feature.geometry)
      for (let i = 0; i + 1 < line.length; i += 2) context[i === 0 ? 'moveTo' : 'lineTo']((line[i] ?? 0) * scale, (line[i + 1] ?? 0) * scale)
  }
  context.stroke()
}

/** The part of the picture that lies in the tile. Rows are even in latitude, which within a tile is as good as even in pixels. */
function drawShade(context: Pen, { image, bounds }: DrawnGround, { x, y, z }: { x: number; y: number; z: number }, size_px: number): void {
  const tile = tileBounds(x, y, z)
  const north = Math.min(tile.north, bounds.north), south = Math.max(tile.south, bounds.south)
  const west = Math.max(tile.west, bounds.west), east = Math.min(tile.east, bounds.east)
  if (north <= south || east <= west) return
  const perLat = image.height / (bounds.north - bounds.south), perLon = image.width / (bounds.east - bounds.west)
  const [left = 0, top = 0, right = 0, bottom = 0] = mercatorLine([{ lat: north, lon: west }, { lat: south, lon: east }])
    .map((value, i) => (value * 2 ** z - (i % 2 === 0 ? x : y)) * size_px)
  context.globalAlpha = SHADE_STRENGTH
  context.imageSmoothingEnabled = true
  context.imageSmoothingQuality = 'high'
  context.drawImage(image, (west - bounds.west) * perLon, (bounds.north - north) * perLat, (east - west) * perLon, (north - south) * perLat, left, top, right - left, bottom - top)
  context.globalAlpha = 1
}

function tileBounds(x: number, y: number, z: number): { north: number; south: number; west: number; east: number } {
  const latOf = (row: number) => (Math.atan(Math.sinh(Math.PI * (1 - (2 * row) / 2 ** z))) * 180) / Math.PI
  const lonOf = (column: number) => (column / 2 ** z - 0.5) * 360
  return { north: latOf(y), south: latOf(y + 1), west: lonOf(x), east: lonOf(x + 1) }
}
