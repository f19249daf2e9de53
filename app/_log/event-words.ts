import { siteEventValues, type SiteEvent } from '@/lib/plan'
import { formatQuantity, say, type NameOf, type UnitSystem } from '../_text'
import '../_text/areas/log'

/** An event in few words: whose, what, how much. */
export function eventWords(event: Pick<SiteEvent, 'kind' | 'value' | 'apparatusId' | 'note'>, names: NameOf, system: UnitSystem): string {
  const unit = siteEventValues[event.kind]?.unit
  const value = event.value !== undefined && unit ? formatQuantity(event.value, unit, system) : 'none'
  const what = say('log.event.said', { what: say('log.event', { kind: event.kind }), value })
  const whose = event.apparatusId === undefined ? undefined : (names(event.apparatusId) ?? event.apparatusId)
  return [whose, event.kind === 'note' ? event.note : what].filter((part) => part !== undefined).join(': ')
}
