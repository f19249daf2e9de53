import { isInside, METRES_PER_DEGREE, type Bounds } from '../geo'
import { issue, requirePositive, requireThat, type Issue } from '../issue'
import { MOST_SAMPLES, NO_HEIGHT, TENTHS_PER_METRE, heightGrid, type DoubtBasis, type HeightGrid } from './height-grid'
import type { HeightSurface, SampleLattice } from './surface'

/** Metres of one degree of latitude, mean earth. */
const DEG_PER_M = 1 / METRES_PER_DEGREE
/** Finer ground than this no hose lay asks for, and laser surveys would fill the memory. */
const LEAST_STEP_M = 3
/** The lowest land is at −430 m, the highest at 8,849 m: a height beyond is none. */
const LOWEST_M = -500
const HIGHEST_M = 9000
/** What Int16 tenths of a metre span. */
const WIDEST_RANGE_M = 6500
/** The district counts as covered from here on: a missing sample at the edge is no gap. */
const WHOLE_SHARE = 0.995
/** So much of the district beyond its bounds, that a lay across the edge has ground under it. */
export const MARGIN_M = 500

export type GridAsk = {
  /** Of the district; the grid reaches a margin beyond. */
  readonly bounds: Bounds
  readonly verticalDoubt_ft: number
  readonly doubtBasis: DoubtBasis
}

export type MadeGrid = {
  readonly grid: HeightGrid
  /** Share of the bounds that has heights. */
  readonly coveredShare: number
  readonly issues: readonly Issue[]
}

/** Bounds grown by so many metres each way, kept on the earth. */
export function grown({ south, west, north, east }: Bounds, margin_m: number): Bounds {
  const dLat = margin_m * DEG_PER_M
  const dLon = dLat / Math.max(0.05, Math.cos((((south + north) / 2) * Math.PI) / 180))
  return { south: Math.max(-90, south - dLat), west: Math.max(-180, west - dLon), north: Math.min(90, north + dLat), east: Math.min(180, east + dLon) }
}

/** True where two bounds share some ground. */
export const areMeeting = (a: Bounds, b: Bounds): boolean => a.south < b.north && b.south < a.north && a.west < b.east && b.west < a.east

/** Step of the grid for bounds and a file's own step: no finer than the file, than 3 m, and than the memory allows. */
export function gridStep_deg({ south, west, north, east }: Bounds, fileStep_deg: number): number {
  requirePositive('fileStep_deg', fileStep_deg)
  const shrink = Math.cos((((south + north) / 2) * Math.PI) / 180)
  const fitting_deg = Math.sqrt(((north - south) * (east - west) * shrink) / (MOST_SAMPLES * 0.95))
  return Math.max(fileStep_deg, LEAST_STEP_M * DEG_PER_M, fitting_deg)
}

/**
 * One grid over a district out of one surface or several that meet, read row by row so that the caller can breathe.
 *
 * Where two surfaces have a height the first one's stands. Samples that lie on lines of latitude and longitude are kept
 * as they are; others are read between, on a grid of about equal steps in metres.
 *
 * @param surfaces one or more, of one kind of data
 * @param ask      bounds of the district; doubt of the data
 * @returns the grid when done; yields the share done after each row. Issues: `elevation-outside` and
 *   `elevation-not-heights` (block, instead of a grid), `elevation-partial` (warn)
 * @throws RangeError if there is no surface
 */
export function* makeGrid(surfaces: readonly HeightSurface[], { bounds, verticalDoubt_ft, doubtBasis }: GridAsk): Generator<number, MadeGrid | Issue> {
  requireThat(surfaces.length > 0, 'surfaces', '[]', 'at least one')
  const meeting = surfaces.filter((surface) => areMeeting(surface.bounds, bounds))
  if (meeting.length === 0) return outsideIssue(surfaces, bounds)
  const { rowCount, columnCount, ...frame } = gridFrame(meeting, grown(bounds, MARGIN_M))
  const heights_m = new Float32Array(rowCount * columnCount).fill(NaN)
  let knownCount = 0, absurdCount = 0, insideCount = 0, coveredCount = 0, lowest_m = Infinity, highest_m = -Infinity
  for (let row = 0; row < rowCount; row++) {
    const lat = frame.bounds.north - ((frame.bounds.north - frame.bounds.south) * row) / (rowCount - 1)
    for (let column = 0; column < columnCount; column++) {
      const lon = frame.bounds.west + ((frame.bounds.east - frame.bounds.west) * column) / (columnCount - 1)
      const isWanted = isInside(bounds, { lat, lon })
      if (isWanted) insideCount++
      const height_m = findFirst(meeting, lat, lon)
      if (height_m === undefined) continue
      if (height_m < LOWEST_M || height_m > HIGHEST_M) {
        absurdCount++
        continue
      }
      heights_m[row * columnCount + column] = height_m
      knownCount++
      if (isWanted) coveredCount++
      lowest_m = Math.min(lowest_m, height_m)
      highest_m = Math.max(highest_m, height_m)
    }
    yield (row + 1) / rowCount
  }
  if (absurdCount > knownCount || highest_m - lowest_m > WIDEST_RANGE_M) return issue('elevation-not-heights', 'block', [], { reason: 'range' })
  if (coveredCount === 0) return outsideIssue(surfaces, bounds)
  const base_m = Math.round((lowest_m + highest_m) / 2)
  const samples = new Int16Array(heights_m.length)
  heights_m.forEach((height_m, i) => { samples[i] = Number.isNaN(height_m) ? NO_HEIGHT : Math.round((height_m - base_m) * TENTHS_PER_METRE) })
  const coveredShare = coveredCount / insideCount
  const grid = heightGrid({ bounds: frame.bounds, rowCount, columnCount, base_m, samples, verticalDoubt_ft, doubtBasis })
  return { grid, coveredShare, issues: coveredShare < WHOLE_SHARE ? [issue('elevation-partial', 'warn', [], { coveredShare })] : [] }
}

type GridFrame = Pick<HeightGrid, 'bounds' | 'rowCount' | 'columnCount'>

/** Where the samples of the grid lie: on those of the surfaces where these lie on common lines, else spread evenly. */
function gridFrame(surfaces: readonly HeightSurface[], bounds: Bounds): GridFrame {
  const lattice = surfaces[0]?.lattice
  if (lattice && surfaces.every((surface) => isOnLattice(surface.lattice, lattice))) {
    const { lat, lon, latStep_deg, lonStep_deg } = lattice
    const south = Math.floor((bounds.south - lat) / latStep_deg), north = Math.ceil((bounds.north - lat) / latStep_deg)
    const west = Math.floor((bounds.west - lon) / lonStep_deg), east = Math.ceil((bounds.east - lon) / lonStep_deg)
    const snapped = { south: lat + south * latStep_deg, north: lat + north * latStep_deg, west: lon + west * lonStep_deg, east: lon + east * lonStep_deg }
    const rowCount = north - south + 1, columnCount = east - west + 1
    const isOnEarth = snapped.south >= -90 && snapped.north <= 90 && snapped.west >= -180 && snapped.east <= 180
    if (isOnEarth && rowCount * columnCount <= MOST_SAMPLES && rowCount > 1 && columnCount > 1) return { bounds: snapped, rowCount, columnCount }
  }
  const step_deg = gridStep_deg(bounds, Math.min(...surfaces.map((surface) => surface.step_deg)))
  const shrink = Math.cos((((bounds.south + bounds.north) / 2) * Math.PI) / 180)
  return {
    bounds,
    rowCount: Math.max(2, Math.ceil((bounds.north - bounds.south) / step_deg) + 1),
    columnCount: Math.max(2, Math.ceil(((bounds.east - bounds.west) * shrink) / step_deg) + 1),
  }
}

function isOnLattice(one: SampleLattice | undefined, other: SampleLattice): boolean {
  if (!one) return false
  const { latStep_deg, lonStep_deg } = other
  const near = (steps: number) => Math.abs(steps - Math.round(steps)) < 1e-3
  const isSameStep = Math.abs(one.latStep_deg / latStep_deg - 1) < 1e-9 && Math.abs(one.lonStep_deg / lonStep_deg - 1) < 1e-9
  return isSameStep && near((one.lat - other.lat) / latStep_deg) && near((one.lon - other.lon) / lonStep_deg)
}

function findFirst(surfaces: readonly HeightSurface[], lat: number, lon: number): number | undefined {
  for (const surface of surfaces) {
    const height_m = surface.findHeightM(lat, lon)
    if (height_m !== undefined) return height_m
  }
  return undefined
}

/** Three decimals with a true minus, as words. */
const place = (degrees: number): string => degrees.toFixed(3).replace('-', '\u2212')

function outsideIssue(surfaces: readonly HeightSurface[], bounds: Bounds): Issue {
  const file = surfaces[0]?.bounds ?? bounds
  return issue('elevation-outside', 'block', [], {
    fileSouth: place(file.south), fileNorth: place(file.north), fileWest: place(file.west), fileEast: place(file.east),
    south: place(bounds.south), north: place(bounds.north), west: place(bounds.west), east: place(bounds.east),
  })
}

/** Doubt of data whose maker states none, by its step: laser surveys, national 10 m data, world-wide radar data. Assumed. */
export function assumedDoubt_ft(step_deg: number): number {
  const step_m = step_deg / DEG_PER_M
  return step_m <= 4 ? 2 : step_m <= 15 ? 10 : HGT_DOUBT_FT
}

/**
 * Doubt of SRTM heights: 16 m.
 *
 * @source SRTM mission requirement, absolute vertical accuracy 16 m at 90 %; from memory
 */
export const HGT_DOUBT_FT = 52.5

/** Metres between rows, for words. */
export const stepM = (step_deg: number): number => step_deg / DEG_PER_M
