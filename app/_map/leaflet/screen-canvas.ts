import L from 'leaflet'
import type { Pen } from '../paint/pen'
import { DrawingBoard } from './drawing-board'

/** How far beyond the edges of the map it is drawn, as a share of the map's size: enough for a drag before the next drawing. */
const MARGIN_SHARE = 0.3

/** Draws on the canvas in pixels of the map's layers, as `latLngToLayerPoint` gives them. */
export type ScreenFrame = {
  context: Pen
  zoom: number
  /** Pixels of the whole Mercator square at this zoom, and where the layers' origin lies in it. */
  worldSize: number
  origin: L.Point
  topLeft: L.Point
  size: L.Point
  /** What of it is in sight now. */
  view: { left: number; top: number; right: number; bottom: number }
}

/** A canvas over the map that is drawn as a whole, and stretched while a zoom is on its way. */
export class ScreenCanvas extends L.Layer {
  readonly #canvas: HTMLCanvasElement
  readonly #board = new DrawingBoard()
  readonly #paint: (frame: ScreenFrame) => void
  #drawn: { centre: L.LatLng; zoom: number; topLeft: L.Point } | undefined
  #request: number | undefined

  constructor(pane: string, className: string, paint: (frame: ScreenFrame) => void) {
    super()
    // A plain layer keeps no options of its own.
    L.setOptions(this, { pane })
    this.#canvas = document.createElement('canvas')
    this.#canvas.className = className
    this.#canvas.setAttribute('aria-hidden', 'true')
    this.#paint = paint
  }

  override onAdd(): this {
    this.getPane()?.append(this.#canvas)
    if (this._map.options.zoomAnimation) L.DomUtil.addClass(this.#canvas, 'leaflet-zoom-animated')
    this.#draw()
    return this
  }

  override onRemove(): this {
    if (this.#request !== undefined) cancelAnimationFrame(this.#request)
    this.#request = undefined
    this.#canvas.remove()
    return this
  }

  override getEvents(): Record<string, L.LeafletEventHandlerFn> {
    return {
      moveend: () => this.drawSoon(),
      viewreset: () => this.drawSoon(),
      resize: () => this.drawSoon(),
      zoom: () => this.#stretch(this._map.getCenter(), this._map.getZoom()),
      zoomanim: (event) => {
        const { center, zoom } = event as L.ZoomAnimEvent
        this.#stretch(center, zoom)
      },
    }
  }

  /** Draws before the next frame, once however often it is asked for. */
  drawSoon(): void {
    this.#request ??= requestAnimationFrame(() => {
      this.#request = undefined
      if (this._map) this.#draw()
    })
  }

  #draw(): void {
    const map = this._map
    const ratio = devicePixelRatio || 1
    const margin = map.getSize().multiplyBy(MARGIN_SHARE).round()
    const size = map.getSize().add(margin.multiplyBy(2))
    const topLeft = map.containerPointToLayerPoint(margin.multiplyBy(-1)).round()
    this.#canvas.style.width = `${size.x}px`
    this.#canvas.style.height = `${size.y}px`
    L.DomUtil.setPosition(this.#canvas, topLeft)
    this.#drawn = { centre: map.getCenter(), zoom: map.getZoom(), topLeft }
    const zoom = map.getZoom()
    const { x: left, y: top } = topLeft.add(margin)
    const view = { left, top, right: left + map.getSize().x, bottom: top + map.getSize().y }
    this.#board.drawOn(this.#canvas, { width_px: Math.round(size.x * ratio), height_px: Math.round(size.y * ratio) }, (context) => {
      context.setTransform(ratio, 0, 0, ratio, -topLeft.x * ratio, -topLeft.y * ratio)
      this.#paint({ view, context, zoom, worldSize: 256 * 2 ** zoom, origin: map.getPixelOrigin(), topLeft, size })
    })
  }

  /** Moves and scales what is drawn to where it belongs at another centre and zoom. */
  #stretch(centre: L.LatLng, zoom: number): void {
    if (!this.#drawn) return
    const map = this._map
    const scale = map.getZoomScale(zoom, this.#drawn.zoom)
    const half = map.getSize().multiplyBy(0.5 + MARGIN_SHARE)
    const pane = L.DomUtil.getPosition(map.getPane('mapPane') ?? this.#canvas)
    const newOrigin = map.project(centre, zoom).subtract(map.getSize().divideBy(2)).add(pane).round()
    const offset = half.multiplyBy(-scale).add(map.project(this.#drawn.centre, zoom)).subtract(newOrigin)
    L.DomUtil.setTransform(this.#canvas, offset, scale)
  }
}
