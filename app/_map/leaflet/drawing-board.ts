import type { Pen } from '../paint/pen'

/**
 * Draws out of sight and puts the finished picture on a canvas of the page. A canvas that is drawn on itself may change at
 * any moment: without a graphics card the browser copies all of it for every frame of the page, as for a letter that is
 * typed beside the map. A finished picture stays where it is.
 */
export class DrawingBoard {
  readonly #board = new OffscreenCanvas(1, 1)

  /**
   * @param width_px  of the picture, whole; 0 leaves the canvas empty
   * @param height_px likewise
   */
  drawOn(canvas: HTMLCanvasElement, { width_px, height_px }: { width_px: number; height_px: number }, draw: (pen: Pen) => void): void {
    if (canvas.width !== width_px) canvas.width = width_px
    if (canvas.height !== height_px) canvas.height = height_px
    const shown = canvas.getContext('bitmaprenderer')
    const pen = this.#board.getContext('2d')
    if (!pen || !shown || width_px === 0 || height_px === 0) return
    // A new size, though the same, also clears the board and everything set for drawing on it.
    this.#board.width = width_px
    this.#board.height = height_px
    draw(pen)
    shown.transferFromImageBitmap(this.#board.transferToImageBitmap())
  }
}
