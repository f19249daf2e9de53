import type { AnsweredPlan } from '@/lib/book'
import { isCounted, type District, type RoadNote } from '@/lib/plan'
import { FIRE_GROUND, findPlace, legUses } from '@/lib/supply'
import { formatQuantity, say, type UnitSystem } from '@/app/_text'
import '@/app/_text/areas/book'
import '@/app/_text/areas/survey'
import type { MapPlace } from '../draw/draw-map'
import type { MapWay } from '../draw/draw-ways'
import { namesFor } from './kit'
import type { MapSetting } from './map-block'

/** Letters of a plan's sites on its maps: F, or F1, F2 where there are several. */
export const siteLetter = (letter: 'F' | 'U', index: number, count: number): string => (count > 1 ? `${letter}${index + 1}` : letter)

/** A plan as its map shows it: its own sites large, what else is about small. */
export function planMap(answered: AnsweredPlan, system: UnitSystem): MapSetting {
  const { bundle } = answered
  const { plan, district } = bundle
  const names = namesFor({ district, answered: [answered] }, plan.id)
  const fire = findPlace(bundle, FIRE_GROUND)
  const used = new Set<string>(plan.fillSites.flatMap(({ draftSiteId, sourceId }) => [draftSiteId ?? '', sourceId ?? '']))
  const places: MapPlace[] = [
    ...plan.fillSites.map(({ point, name }, i): MapPlace => ({ kind: 'fillSite', point, name, letter: siteLetter('F', i, plan.fillSites.length) })),
    ...plan.dumpSites.map(({ point, name }, i): MapPlace => ({ kind: 'dumpSite', point, name, letter: siteLetter('U', i, plan.dumpSites.length) })),
    ...(fire ? [{ kind: 'fireGround' as const, point: fire, name: names(FIRE_GROUND) ?? say('plan.fire-ground') }] : []),
    ...(plan.hoseLays ?? []).filter(isCounted).flatMap(({ points: [point], name }): MapPlace[] => (point ? [{ kind: 'hosePoint', point, name }] : [])),
    ...minorPlaces(district, system, ['roadNote', 'draftSite', 'station'], used),
  ]
  return { places, ways: planWays(answered) }
}

type MinorKind = 'roadNote' | 'draftSite' | 'source' | 'hazard' | 'station'

/**
 * What else is about, small, in the order of the kinds; of sources those that no draft site stands at.
 *
 * @param shownIds what the map shows large
 */
export function minorPlaces({ roadNotes, draftSites, sources, hazards, stations }: District, system: UnitSystem, kinds: readonly MinorKind[], shownIds: ReadonlySet<string> = new Set()): MapPlace[] {
  const lists: Readonly<Record<MinorKind, readonly (Pick<MapPlace, 'point' | 'name'> & { readonly id: string })[]>> = {
    roadNote: roadNotes.map((note) => ({ id: note.id, point: note.point, name: noteWords(note, system) })),
    draftSite: draftSites, source: sources.filter(({ id }) => !draftSites.some(({ sourceId }) => sourceId === id)), hazard: hazards, station: stations,
  }
  return kinds.flatMap((kind) => lists[kind].filter(({ id }) => !shownIds.has(id)).map(({ point, name }): MapPlace => ({ kind, point, name, isMinor: true })))
}

/** The ways a plan drives, and its hose lays. */
function planWays({ bundle }: AnsweredPlan): MapWay[] {
  const { plan } = bundle
  const siteIds = new Set<string>([...plan.fillSites, ...plan.dumpSites].map(({ id }) => id))
  const legs = new Map(bundle.legs.map((leg) => [leg.key, leg]))
  return [
    ...legUses(bundle).flatMap(({ key, fromId, load, ask }): MapWay[] => {
      const leg = legs.get(key)
      if (leg?.by === 'none') return []
      const isKnown = leg !== undefined && leg.path.length > 1
      return [{ path: isKnown ? leg.path : [ask.from, ...ask.via, ask.to], look: !siteIds.has(fromId) ? 'approach' : load === 'full' ? 'loaded' : 'empty', isStraight: !isKnown }]
    }),
    ...(plan.hoseLays ?? []).filter(isCounted).map(({ points }): MapWay => ({ path: points, look: 'lay' })),
  ]
}

/** A road note in a few words: what is posted first, for that turns vehicles away. */
function noteWords({ name, closed, maxWeight_lb, maxHeight_ft, maxWidth_ft, speed_mph }: RoadNote, system: UnitSystem): string {
  const posted = [
    ...(closed ? [say('survey.summary.closed')] : []),
    ...(maxWeight_lb === undefined ? [] : [formatQuantity(maxWeight_lb, 'lb', system)]),
    ...(maxHeight_ft === undefined ? [] : [say('survey.summary.high', { height: formatQuantity(maxHeight_ft, 'ft', system) })]),
    ...(maxWidth_ft === undefined ? [] : [say('survey.summary.wide', { width: formatQuantity(maxWidth_ft, 'ft', system) })]),
    ...(speed_mph === undefined ? [] : [formatQuantity(speed_mph, 'mph', system)]),
  ]
  return posted.length > 0 ? say('book.note', { name, posted: posted.join(', ') }) : name
}
