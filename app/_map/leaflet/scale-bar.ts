import L from 'leaflet'
import { formatNumber } from '../../_text'

/** Longest that a line of the scale is drawn, [px]. */
const MOST_PX = 120

/** The scale of the map, its lengths in digits as everywhere: "1,000 ft". */
export class ScaleBar extends L.Control.Scale {
  constructor() {
    super({ position: 'bottomleft', maxWidth: MOST_PX })
  }

  /** Called by Leaflet for each of the two lines. */
  _updateScale(line: HTMLElement, text: string, share: number): void {
    line.style.width = `${Math.round(MOST_PX * share)}px`
    line.textContent = text.replace(/^\d{4,}/, (digits) => formatNumber(Number(digits)))
  }
}
