/**
 * A site drawn to scale, in feet: x along the road, to the right; y away from the road, downwards on paper.
 * What nobody has measured has its usual size, and the sheet says so.
 */
export type SketchRectPart = 'road' | 'lane' | 'water' | 'tank' | 'tender' | 'waiting' | 'pumper' | 'nurse'
export type SketchLinePart = 'suction' | 'fillLine' | 'supplyLine' | 'siphon' | 'lay' | 'arriving' | 'leaving' | 'backing'
export type SketchSpotPart = 'spotter' | 'strainer' | 'hydrant'

export type SketchRect = {
  readonly part: SketchRectPart
  readonly x_ft: number
  readonly y_ft: number
  readonly across_ft: number
  readonly down_ft: number
  /** The item it stands for, where there is one. */
  readonly itemId?: string
  /** Its number among its like, from 1. */
  readonly number?: number
}
export type SketchLine = { readonly part: SketchLinePart; readonly points: readonly (readonly [x_ft: number, y_ft: number])[]; readonly number?: number }
export type SketchSpot = { readonly part: SketchSpotPart; readonly x_ft: number; readonly y_ft: number }

/** Something that does not come out as drawn. */
export type SketchDoubt =
  | { readonly code: 'hose-short'; readonly number: number; readonly needed_ft: number; readonly has_ft: number }
  | { readonly code: 'front-short'; readonly needed_ft: number; readonly has_ft: number }

export type Sketch = {
  readonly rects: readonly SketchRect[]
  readonly lines: readonly SketchLine[]
  readonly spots: readonly SketchSpot[]
  readonly doubts: readonly SketchDoubt[]
  /** Compass heading of x, where the ways of the plan tell it. */
  readonly x_deg?: number
}

/** How tenders come by and go, as compass headings; absent where no way over roads is known. */
export type SiteTraffic = { readonly arriving_deg?: number; readonly leaving_deg?: number; /** From the site to the water, or to the fire. */ readonly towards_deg?: number }

/** A single-unit tender or pumper. Common practice, no source. */
export const VEHICLE_LENGTH_FT = 30
/** Widest that drives without a permit: 102 in (23 CFR 658.15; from memory). */
export const VEHICLE_WIDTH_FT = 8.5
/** Two narrow lanes. Common practice, no source. */
export const ROAD_WIDTH_FT = 20
/** Between things that stand beside each other. Common practice, no source. */
export const CLEAR_FT = 2
/** How far the road is drawn on beyond what stands along it. Common practice, no source. */
export const OFF_FT = 30

/** Room the sketch takes, in feet. */
export function extentOf({ rects, lines, spots }: Pick<Sketch, 'rects' | 'lines' | 'spots'>): { left_ft: number; top_ft: number; right_ft: number; bottom_ft: number } {
  const xs = [...rects.flatMap(({ x_ft, across_ft }) => [x_ft, x_ft + across_ft]), ...lines.flatMap(({ points }) => points.map(([x_ft]) => x_ft)), ...spots.map(({ x_ft }) => x_ft)]
  const ys = [...rects.flatMap(({ y_ft, down_ft }) => [y_ft, y_ft + down_ft]), ...lines.flatMap(({ points }) => points.map(([, y_ft]) => y_ft)), ...spots.map(({ y_ft }) => y_ft)]
  return { left_ft: Math.min(...xs), top_ft: Math.min(...ys), right_ft: Math.max(...xs), bottom_ft: Math.max(...ys) }
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180

/**
 * Which way x runs: along the road, with what the site works towards (water, or fire) on the lower side of the paper.
 *
 * @returns the heading of x, and whether tenders arrive and leave along it (1) or against it (−1)
 */
export function roadAxis({ arriving_deg, leaving_deg, towards_deg }: SiteTraffic): { x_deg?: number; arrives: 1 | -1; leaves: 1 | -1 } {
  if (arriving_deg === undefined) return { arrives: 1, leaves: 1 }
  // Right of the way one drives is downwards on the paper.
  const isRight = towards_deg === undefined || Math.sin(radians(towards_deg - arriving_deg)) >= 0
  const x_deg = (arriving_deg + (isRight ? 0 : 180)) % 360
  const along = (heading: number): 1 | -1 => (Math.cos(radians(heading - x_deg)) >= 0 ? 1 : -1)
  return { x_deg, arrives: along(arriving_deg), leaves: along(leaving_deg ?? arriving_deg) }
}

/** The road along all that stands there, with the arrows of who comes and who goes. */
export function addRoad(rects: SketchRect[], lines: SketchLine[], edge_ft: number, arrives: 1 | -1, leaves: 1 | -1, lane?: { readonly from_ft: number; readonly to_ft: number }): void {
  const left_ft = Math.min(...rects.map((rect) => rect.x_ft)) - OFF_FT
  const right_ft = Math.max(...rects.map((rect) => rect.x_ft + rect.across_ft)) + OFF_FT
  rects.unshift({ part: 'road', x_ft: left_ft, y_ft: -edge_ft, across_ft: right_ft - left_ft, down_ft: 2 * edge_ft })
  if (lane) rects.splice(1, 0, { part: 'lane', x_ft: lane.from_ft, y_ft: edge_ft, across_ft: lane.to_ft - lane.from_ft, down_ft: VEHICLE_WIDTH_FT + 2 * CLEAR_FT })
  const arrow = (isLeft: boolean, direction: 1 | -1): readonly (readonly [number, number])[] => {
    // Right-hand traffic: along x one drives on the lower side.
    const y_ft = direction === 1 ? edge_ft / 2 : -edge_ft / 2
    const from_ft = isLeft ? left_ft + 4 : right_ft - 4 - OFF_FT * 0.7
    const ends: readonly [number, number] = [from_ft, from_ft + OFF_FT * 0.7]
    return direction === 1 ? [[ends[0], y_ft], [ends[1], y_ft]] : [[ends[1], y_ft], [ends[0], y_ft]]
  }
  lines.push({ part: 'arriving', points: arrow(arrives === 1, arrives) }, { part: 'leaving', points: arrow(leaves === -1, leaves) })
}
