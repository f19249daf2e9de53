import L from 'leaflet'
import type { DrawnDistrict } from '../drawn-district'
import type { DrawnGround } from '../drawn-ground'
import { mercatorLine } from '../mercator'
import { drawGround } from '../paint/draw-ground'
import { drawTile } from '../paint/draw-tile'
import type { Palette } from '../paint/palette'
import type { Pen } from '../paint/pen'
import { DrawingBoard } from './drawing-board'

const TILE_PX = 256

/** The district drawn tile by tile on canvases of our own; nothing is fetched. */
export class DistrictTiles extends L.GridLayer {
  #district: DrawnDistrict
  #palette: Palette
  #ground: DrawnGround | undefined
  readonly #board = new DrawingBoard()

  constructor(district: DrawnDistrict, palette: Palette) {
    super({ tileSize: TILE_PX, updateWhenZooming: false, keepBuffer: 3 })
    this.#district = district
    this.#palette = palette
  }

  setPalette(palette: Palette): void {
    this.#palette = palette
    this.redraw()
  }

  /** The lie of the ground under the roads, or none. */
  setGround(ground: DrawnGround | undefined): void {
    if (this.#ground === ground) return
    this.#ground = ground
    if (this._map) this.redraw()
  }

  override createTile({ x, y, z }: L.Coords): HTMLElement {
    const canvas = document.createElement('canvas')
    const edge_px = Math.round(TILE_PX * (devicePixelRatio || 1))
    this.#board.drawOn(canvas, { width_px: edge_px, height_px: edge_px }, (pen) => {
      pen.scale(edge_px / TILE_PX, edge_px / TILE_PX)
      this.#drawBase(pen, x, y, z)
      if (this.#ground) drawGround(pen, this.#ground, { x, y, z }, TILE_PX, this.#palette)
      const tile = this.#district.tiles.getTileRaw(z, x, y)
      if (tile) drawTile(pen, tile, z, TILE_PX, this.#palette)
    })
    return canvas
  }

  /** The ground of the district, and a darker one where its data ends: beyond it nothing is known. */
  #drawBase(context: Pen, x: number, y: number, z: number): void {
    const { south, west, north, east } = this.#district.bounds
    const corners = mercatorLine([{ lat: north, lon: west }, { lat: south, lon: east }]).map((value, i) => (value * 2 ** z - (i % 2 === 0 ? x : y)) * TILE_PX)
    const [left = 0, top = 0, right = 0, bottom = 0] = corners.map((value) => Math.min(Math.max(value, -8), TILE_PX + 8))
    context.fillStyle = this.#palette.beyond
    context.fillRect(0, 0, TILE_PX, TILE_PX)
    context.fillStyle = this.#palette.ground
    context.fillRect(left, top, right - left, bottom - top)
    context.strokeStyle = this.#palette.graticule
    context.lineWidth = 1
    context.strokeRect(left, top, right - left, bottom - top)
  }
}
