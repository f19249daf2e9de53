import type { EditBody, Source } from '@/lib/plan'
import { say } from '../_text'
import type { MapSource } from './use-map-sources'

/** One id for one thing of the map, so that accepting it twice, or on two devices, adds it once. */
export const idOfMapSource = ({ osmId }: Pick<MapSource, 'osmId'>): string => `osm-${osmId}`

/** The edit that takes a possible source of the map data into the survey, as something still to be checked on the spot. */
export function acceptEdit(source: MapSource, dataDate: string): EditBody & { kind: 'addItem' } {
  const { osmId, point, details, name } = source
  const id = String(osmId)
  return {
    kind: 'addItem',
    collection: 'sources',
    item: {
      id: idOfMapSource(source), kind: sourceKindOf(source), point,
      name: (name || say('survey.check.name', { kind: say(`survey.check.kind.${source.kind}`), id })).slice(0, 120),
      ...(details !== '' && { notes: say('survey.check.notes', { details: detailWords(details) }) }),
      evidence: { point: { mark: 'assumed', source: dataDate === '' ? say('survey.check.from', { id }) : say('survey.check.from-dated', { id, day: dataDate.slice(0, 10) }) } },
    },
  }
}

/** What the data says, as it says it. */
export const detailWords = (details: string): string => details.split(';').map((pair) => pair.replace('=', ': ')).join(' · ')

/** The kind of source the data most likely means; the officer sets it right on the spot. */
function sourceKindOf({ kind, details }: MapSource): Source['kind'] {
  switch (kind) {
    case 'hydrant': return 'pressureHydrant'
    case 'pondHydrant': return 'dryHydrant'
    case 'tank': case 'cistern': case 'pool': return 'cistern'
    case 'pond': return 'pond'
    case 'suctionPoint': return /water_source=(stream|river|canal)/.test(details) ? 'stream' : /water_source=lake/.test(details) ? 'lake' : 'pond'
  }
}
