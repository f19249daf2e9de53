import { GALLONS_PER_CUBIC_FOOT } from '../../units'
import type { DumpSite } from '../../plan'
import { addRoad, CLEAR_FT, OFF_FT, ROAD_WIDTH_FT, roadAxis, VEHICLE_LENGTH_FT, VEHICLE_WIDTH_FT, type SiteTraffic, type Sketch, type SketchDoubt, type SketchLine, type SketchRect, type SketchSpot } from './sketch'

export type SketchTank = { readonly id?: string; readonly capacity_gal: number; readonly height_in: number }

const IN_PER_FT = 12
/** Side of a square tank: √(volume / height of the lip), in feet. */
export const tankSide_ft = ({ capacity_gal, height_in }: SketchTank): number => Math.sqrt(capacity_gal / GALLONS_PER_CUBIC_FOOT / (height_in / IN_PER_FT))

/* Room between things, in feet. Common practice, no source. */
const TANK_GAP_FT = 3
const SIDE_ROOM_FT = 12
const IN_LINE_ROOM_FT = 8
const SUCTION_FT = 10
/** Where in a tank suction and siphons end, down the paper: its name stands in the middle. */
const LOW_SHARE = 0.84

/**
 * A dump site to scale: the tanks in a row, tenders backed in to them from the road or driving by, the pumper at the first tank
 * on the far side, its line to the fire, jet siphons between the tanks.
 *
 * @param tanks as they stand, first the one the pumper drafts from; none where a nurse tender takes the loads
 */
export function dumpSketch(site: Pick<DumpSite, 'manner' | 'positionCount' | 'tankLink' | 'nurseId' | 'pumperId'>, tanks: readonly SketchTank[], traffic: SiteTraffic = {}): Sketch {
  const { x_deg, arrives, leaves } = roadAxis(traffic)
  const isBacking = (site.manner ?? 'backIn') === 'backIn'
  const positionCount = site.positionCount ?? 1
  const edge_ft = ROAD_WIDTH_FT / 2
  const front_ft = edge_ft + CLEAR_FT + (isBacking ? VEHICLE_LENGTH_FT : VEHICLE_WIDTH_FT) + CLEAR_FT
  const rects: SketchRect[] = []
  const lines: SketchLine[] = []
  const spots: SketchSpot[] = []
  const doubts: SketchDoubt[] = []

  let x_ft = 0
  const standing = tanks.map((tank, index): SketchRect => {
    const side_ft = tankSide_ft(tank)
    const rect: SketchRect = { part: 'tank', x_ft, y_ft: front_ft, across_ft: side_ft, down_ft: side_ft, number: index + 1, ...(tank.id !== undefined && { itemId: tank.id }) }
    x_ft += side_ft + TANK_GAP_FT
    return rect
  })
  if (site.nurseId !== undefined) standing.push({ part: 'nurse', x_ft: 0, y_ft: front_ft, across_ft: VEHICLE_LENGTH_FT, down_ft: VEHICLE_WIDTH_FT, itemId: site.nurseId })
  rects.push(...standing)
  const first = standing[0]
  const dumpedInto = site.tankLink === 'jetSiphon' && standing.length > 1 ? standing.slice(1) : standing
  const left_ft = dumpedInto[0]?.x_ft ?? 0
  const right_ft = Math.max(left_ft, ...dumpedInto.map((rect) => rect.x_ft + rect.across_ft))
  const middle_ft = (left_ft + right_ft) / 2

  const pitch_ft = isBacking ? SIDE_ROOM_FT : VEHICLE_LENGTH_FT + IN_LINE_ROOM_FT
  const across_ft = isBacking ? VEHICLE_WIDTH_FT : VEHICLE_LENGTH_FT
  const places = Array.from({ length: positionCount }, (_, index) => middle_ft + (index - (positionCount - 1) / 2) * pitch_ft)
  places.forEach((at_ft, index) => {
    rects.push({ part: 'tender', x_ft: at_ft - across_ft / 2, y_ft: edge_ft + CLEAR_FT, across_ft, down_ft: isBacking ? VEHICLE_LENGTH_FT : VEHICLE_WIDTH_FT, number: index + 1 })
    if (isBacking) {
      spots.push({ part: 'spotter', x_ft: at_ft - VEHICLE_WIDTH_FT / 2 - 1.5, y_ft: front_ft - CLEAR_FT - 3 })
      lines.push({ part: 'backing', points: [[at_ft, edge_ft - 2], [at_ft, edge_ft + 1.5]] })
    }
  })
  const needed_ft = (positionCount - 1) * pitch_ft + VEHICLE_WIDTH_FT
  if (isBacking && needed_ft > right_ft - left_ft + VEHICLE_WIDTH_FT) doubts.push({ code: 'front-short', needed_ft, has_ft: right_ft - left_ft })

  if (site.tankLink === 'jetSiphon') for (let i = standing.length - 1; i > 0; i--) {
    const from = standing[i], to = standing[i - 1]
    if (from && to) lines.push({ part: 'siphon', points: [[from.x_ft + 3, from.y_ft + from.down_ft * LOW_SHARE], [to.x_ft + to.across_ft - 3, to.y_ft + to.down_ft * LOW_SHARE]] })
  }
  if (first && site.pumperId !== undefined) {
    const y_ft = first.y_ft + first.down_ft + SUCTION_FT - CLEAR_FT
    const x0_ft = first.x_ft + first.across_ft / 2 - VEHICLE_LENGTH_FT / 2
    rects.push({ part: 'pumper', x_ft: x0_ft, y_ft, across_ft: VEHICLE_LENGTH_FT, down_ft: VEHICLE_WIDTH_FT, itemId: site.pumperId })
    const suction_ft = first.x_ft + first.across_ft / 2
    lines.push({ part: 'suction', points: [[suction_ft, y_ft], [suction_ft, first.y_ft + first.down_ft * LOW_SHARE]] })
    spots.push({ part: 'strainer', x_ft: suction_ft, y_ft: first.y_ft + first.down_ft * LOW_SHARE })
    lines.push({ part: 'supplyLine', points: [[x0_ft, y_ft + VEHICLE_WIDTH_FT / 2], [x0_ft - 14, y_ft + VEHICLE_WIDTH_FT / 2]] })
  }
  addRoad(rects, lines, edge_ft, arrives, leaves, isBacking ? undefined : { from_ft: Math.min(...places) - across_ft / 2 - OFF_FT / 2, to_ft: Math.max(...places) + across_ft / 2 + OFF_FT / 2 })
  return { rects, lines, spots, doubts, ...(x_deg !== undefined && { x_deg }) }
}
