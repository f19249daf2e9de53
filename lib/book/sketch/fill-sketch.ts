import type { FillSite, Source } from '../../plan'
import { addRoad, CLEAR_FT, ROAD_WIDTH_FT, roadAxis, VEHICLE_LENGTH_FT, VEHICLE_WIDTH_FT, type SiteTraffic, type Sketch, type SketchDoubt, type SketchLine, type SketchRect, type SketchSpot } from './sketch'

/* Room between things, in feet. Common practice, no source. */
const IN_LINE_ROOM_FT = 10
const BANK_FT = 6
const HYDRANT_FT = 12
const WATER_FT = 16
const YARD_FT = 10

export type FillSketchAsk = {
  readonly site: Pick<FillSite, 'bayCount' | 'fillLine' | 'pumperId' | 'bayOrder'>
  readonly sourceKind?: Source['kind'] | undefined
  /** Hard suction as it is laid, one line. */
  readonly suction_ft: number
  readonly lineCount: number
  readonly isDryHydrant: boolean
  /** Fed by a hose lay instead of a pumper at the water. */
  readonly isFed: boolean
  readonly traffic?: SiteTraffic
}

/**
 * A fill site to scale: the bays in line beside the road, the pumper at the water with its hard suction at its true length, and
 * the fill lines to the bays. Hose lies straight here; a line too short for its bay as drawn is a doubt.
 */
export function fillSketch({ site, sourceKind, suction_ft, lineCount, isDryHydrant, isFed, traffic = {} }: FillSketchAsk): Sketch {
  const { x_deg, arrives, leaves } = roadAxis(traffic)
  const bayCount = site.bayCount ?? 1
  const edge_ft = ROAD_WIDTH_FT / 2
  const pitch_ft = VEHICLE_LENGTH_FT + IN_LINE_ROOM_FT
  const rects: SketchRect[] = []
  const lines: SketchLine[] = []
  const spots: SketchSpot[] = []
  const doubts: SketchDoubt[] = []
  const bays = Array.from({ length: bayCount }, (_, index) => ({ x_ft: (index - (bayCount - 1) / 2) * pitch_ft * arrives, number: index + 1 }))
  for (const { x_ft, number } of bays) rects.push({ part: 'tender', x_ft: x_ft - VEHICLE_LENGTH_FT / 2, y_ft: edge_ft + CLEAR_FT, across_ft: VEHICLE_LENGTH_FT, down_ft: VEHICLE_WIDTH_FT, number })
  const waiting_ft = -arrives * ((bayCount - 1) / 2 + 1) * pitch_ft
  rects.push({ part: 'waiting', x_ft: waiting_ft - VEHICLE_LENGTH_FT / 2, y_ft: edge_ft + CLEAR_FT, across_ft: VEHICLE_LENGTH_FT, down_ft: VEHICLE_WIDTH_FT })

  const top_ft = edge_ft + 2 * CLEAR_FT + VEHICLE_WIDTH_FT + YARD_FT
  const under_ft = top_ft + VEHICLE_WIDTH_FT
  const isHydrant = sourceKind === 'pressureHydrant'
  if (site.pumperId !== undefined && !isFed) rects.push({ part: 'pumper', x_ft: -VEHICLE_LENGTH_FT / 2, y_ft: top_ft, across_ft: VEHICLE_LENGTH_FT, down_ft: VEHICLE_WIDTH_FT, itemId: site.pumperId })
  if (isFed) lines.push({ part: 'lay', points: [[0, under_ft + 24], [0, top_ft]] })
  else if (isHydrant) {
    spots.push({ part: 'hydrant', x_ft: 0, y_ft: under_ft + HYDRANT_FT })
    lines.push({ part: 'supplyLine', points: [[0, under_ft + HYDRANT_FT], [0, under_ft]] })
  }
  else addWater()

  const from: readonly [number, number] = [0, top_ft]
  const has_ft = site.fillLine?.length_ft
  for (const { x_ft, number } of bays) {
    const to: readonly [number, number] = [x_ft - arrives * (VEHICLE_LENGTH_FT / 2 - 3), edge_ft + CLEAR_FT + VEHICLE_WIDTH_FT]
    lines.push({ part: 'fillLine', points: [from, to], number })
    const needed_ft = Math.hypot(to[0] - from[0], to[1] - from[1])
    if (has_ft !== undefined && needed_ft > has_ft) doubts.push({ code: 'hose-short', number, needed_ft, has_ft })
  }
  addRoad(rects, lines, edge_ft, arrives, leaves, laneOf())
  return { rects, lines, spots, doubts, ...(x_deg !== undefined && { x_deg }) }

  function laneOf() {
    const ends = rects.filter(({ part }) => part === 'tender' || part === 'waiting')
    return { from_ft: Math.min(...ends.map(({ x_ft }) => x_ft)) - YARD_FT, to_ft: Math.max(...ends.map(({ x_ft, across_ft }) => x_ft + across_ft)) + YARD_FT }
  }

  function addWater(): void {
    // The hose runs on under water; half a dry hydrant's stub does.
    const bank_ft = under_ft + Math.min(BANK_FT, suction_ft / 2)
    const end_ft = under_ft + suction_ft + (isDryHydrant ? BANK_FT : 0)
    const half_ft = sourceKind === 'cistern' ? 14 : 36
    rects.unshift({ part: 'water', x_ft: -half_ft, y_ft: isDryHydrant ? under_ft + suction_ft + 2 : bank_ft, across_ft: 2 * half_ft, down_ft: Math.max(WATER_FT, end_ft + 6 - bank_ft) })
    for (let line = 0; line < lineCount; line++) {
      const x_ft = (line - (lineCount - 1) / 2) * 5
      lines.push({ part: 'suction', points: [[x_ft, under_ft], [x_ft, under_ft + suction_ft]] })
      spots.push({ part: isDryHydrant ? 'hydrant' : 'strainer', x_ft, y_ft: under_ft + suction_ft })
    }
  }
}
