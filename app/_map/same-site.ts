import type { MapSite } from './map-types'

/** Whether two sites are drawn alike, at the same point: most of many are, when one of them has changed. */
export function isSameSite(a: MapSite, b: MapSite): boolean {
  return a === b || (
    a.id === b.id && a.kind === b.kind && a.name === b.name && a.letter === b.letter && a.note === b.note
    && a.point.lat === b.point.lat && a.point.lon === b.point.lon
    && a.isMarked === b.isMarked && a.isChosen === b.isChosen && a.isGhost === b.isGhost && a.isMovable === b.isMovable
  )
}
