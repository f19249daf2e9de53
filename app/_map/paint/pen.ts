/** What is drawn with, whether what it draws on is seen meanwhile or not. */
export type Pen = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D
