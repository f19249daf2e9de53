import type { ScreenFrame } from '../leaflet/screen-canvas'
import { graticuleStep } from './graticule-step'
import type { Palette } from './palette'

/** Lines of latitude and longitude, where there is nothing else to draw. */
export function drawGraticule({ context, worldSize, origin, topLeft, size }: ScreenFrame, palette: Palette): void {
  const step = graticuleStep(360 / worldSize, 90)
  const lonAt = (x: number) => ((x + origin.x) / worldSize - 0.5) * 360
  const latAt = (y: number) => (Math.atan(Math.sinh(Math.PI * (1 - (2 * (y + origin.y)) / worldSize))) * 180) / Math.PI
  const xOf = (lon: number) => (lon / 360 + 0.5) * worldSize - origin.x
  const yOf = (lat: number) => {
    const sine = Math.sin((lat * Math.PI) / 180)
    return (0.5 - Math.log((1 + sine) / (1 - sine)) / (4 * Math.PI)) * worldSize - origin.y
  }
  context.strokeStyle = palette.graticule
  context.lineWidth = 1
  context.setLineDash([])
  context.beginPath()
  const right = topLeft.x + size.x
  const bottom = topLeft.y + size.y
  for (let i = Math.ceil(lonAt(topLeft.x) / step); i * step <= lonAt(right); i += 1) {
    const x = Math.round(xOf(i * step)) + 0.5
    context.moveTo(x, topLeft.y)
    context.lineTo(x, bottom)
  }
  for (let i = Math.ceil(latAt(bottom) / step); i * step <= latAt(topLeft.y); i += 1) {
    const y = Math.round(yOf(i * step)) + 0.5
    context.moveTo(topLeft.x, y)
    context.lineTo(right, y)
  }
  context.stroke()
}
