import type { Tags } from '../osm'

/**
 * Highest sensible speed of a heavy tender by what lies under the wheels, in mph. Common
 * practice, no source, except that a fatal tender rollover on gravel began at about 40 mph
 * (NIOSH F2005-27, a published investigation): gravel stays well below that.
 */
const surfaceCap_mph: Readonly<Record<string, number>> = {
  compacted: 30, fine_gravel: 25, gravel: 25, unpaved: 25, pebblestone: 20, chipseal: 45,
  sett: 25, cobblestone: 20, 'cobblestone:flattened': 25, unhewn_cobblestone: 15, paving_stones: 30, metal: 20, wood: 10, bricks: 30,
  ground: 15, dirt: 15, earth: 15, soil: 15, clay: 12, rock: 8, stone: 8, woodchips: 8,
  grass: 8, grass_paver: 12, mud: 4, sand: 5, snow: 10, ice: 8,
}
const pavedSurfaces = new Set([
  'paved', 'asphalt', 'concrete', 'concrete:plates', 'concrete:lanes', 'chipseal', 'sett', 'cobblestone', 'cobblestone:flattened',
  'unhewn_cobblestone', 'paving_stones', 'metal', 'wood', 'bricks', 'grass_paver',
])
const softSurfaces = new Set(['ground', 'dirt', 'earth', 'soil', 'clay', 'grass', 'mud', 'sand', 'woodchips', 'snow', 'ice'])

/** Tracks by how firm they are: 1 solid to 5 soft. */
const trackCap_mph: Readonly<Record<string, number>> = { grade1: 25, grade2: 20, grade3: 12, grade4: 8, grade5: 5 }
const softTracks = new Set(['grade4', 'grade5'])

const smoothnessCap_mph: Readonly<Record<string, number>> = { intermediate: 35, bad: 20, very_bad: 10, horrible: 5 }
const impassableSmoothness = new Set(['very_horrible', 'impassable'])

export type Ground = { readonly cap_mph: number; readonly isUnpaved: boolean; readonly isSoft: boolean; readonly isImpassable: boolean }

/**
 * What the surface, track grade and smoothness tags say of the ground.
 *
 * @returns the speed they allow, [mph], Infinity where they say nothing; and what to warn of
 */
export function groundOf(tags: Tags, isTrack: boolean): Ground {
  const { surface = '', tracktype = '', smoothness = '' } = tags
  const caps = [surfaceCap_mph[surface], isTrack || tracktype !== '' ? trackCap_mph[tracktype] : undefined, smoothnessCap_mph[smoothness]]
  const isPaved = pavedSurfaces.has(surface)
  return {
    cap_mph: Math.min(...caps.map((cap) => cap ?? Infinity)),
    isUnpaved: surface === '' ? isTrack && tracktype !== 'grade1' : !isPaved,
    isSoft: softSurfaces.has(surface) || softTracks.has(tracktype),
    isImpassable: impassableSmoothness.has(smoothness),
  }
}
