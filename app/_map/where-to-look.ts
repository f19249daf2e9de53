import { findBounds, type Bounds, type Point } from '@/lib/geo'
import type { MapRoute, MapSite } from './map-types'

type Shown = { readonly home?: Bounds; readonly sites?: readonly MapSite[]; readonly routes?: readonly MapRoute[]; readonly district?: { readonly bounds: Bounds }; readonly start?: Bounds | undefined }

/** Ways from far off are left out of the first look where with them the rest would be smaller than one part in so many: judgement. */
const MOST_WIDER = 2.5

/**
 * Where a map looks first: at what the page is about with the ways between, and with the ways from the stations where they do not lead
 * far off; without such a home at all sites, else at the district, else where the district is said to begin.
 */
export function openingBounds({ home, sites = [], routes = [], district, start }: Shown): Bounds | undefined {
  if (!home) return findBounds(sites.map(({ point }) => point)) ?? district?.bounds ?? start
  const work = joined([home, ...routes.filter(({ isQuiet }) => !isQuiet).map(({ path }) => findBounds(path))])!
  const whole = joined([work, ...routes.map(({ path }) => findBounds(path))])!
  return spanOf(whole) <= MOST_WIDER * spanOf(work) ? whole : work
}

/** All that is there: sites, vehicles and ways; what is only drawn as about, where there is nothing else; else the district. */
export function allBounds({ home, sites = [], routes = [], district, start }: Shown): Bounds | undefined {
  const own = sites.filter(({ isGhost }) => !isGhost)
  return joined([home, ...routes.map(({ path }) => findBounds(path)), findBounds((own.length > 0 ? own : sites).map(({ point }) => point))]) ?? district?.bounds ?? start
}

const cornersOf = ({ south, west, north, east }: Bounds): Point[] => [{ lat: south, lon: west }, { lat: north, lon: east }]

const joined = (all: readonly (Bounds | undefined)[]): Bounds | undefined => findBounds(all.flatMap((one) => (one ? cornersOf(one) : [])))

/** The longer of its sides, in degrees of latitude. */
const spanOf = ({ south, west, north, east }: Bounds): number => Math.max(north - south, (east - west) * Math.cos(((south + north) / 2) * (Math.PI / 180)))
