import type { Change, Trigger } from '@/lib/plan'
import type { PossibleTrouble } from '@/lib/exercise'
import { formatClock, formatMinutes, formatQuantity, formatShare, listWords, type NameOf, say, type UnitSystem } from '../_text'
import '../_text/areas/exercise'
import { planWords } from './plan-words'

/** What a change does, in a sentence. */
export function changeWords(change: Change, names: NameOf, system: UnitSystem): string {
  const name = (id: string) => names(id) ?? id
  const flow = (flow_gpm: number) => formatQuantity(flow_gpm, 'gpm', system)
  switch (change.kind) {
    case 'plan':
      return planWords(change.edits.map(({ body }) => body), name)
    case 'tenderOut':
      return say('exercise.change.tenderOut', { tender: name(change.tenderId) })
    case 'unitLate':
      return say('exercise.change.unitLate', { unit: name(change.unitId), time: formatMinutes(change.delay_s) })
    case 'fillRate':
      return say(change.rateShare === 0 && change.fault !== 'hose' ? (change.fault === 'primer' ? 'exercise.change.fillRate.primer' : 'exercise.change.fillRate.stopped') : change.rateShare < 1 && change.fault === 'strainer' ? 'exercise.change.fillRate.strainer' : change.rateShare < 1 && change.fault === 'hose' ? 'exercise.change.fillRate.hose' : change.rateShare === 1 ? 'exercise.change.fillRate.well' : 'exercise.change.fillRate.slow', { site: name(change.fillSiteId), share: formatShare(change.rateShare) })
    case 'sourceLow':
      return say('exercise.change.sourceLow', { site: name(change.fillSiteId), share: formatShare(change.leftShare) })
    case 'tankLeak':
      return say(change.leak_gpm === 0 ? 'exercise.change.tankLeak.mended' : 'exercise.change.tankLeak', { site: name(change.dumpSiteId), flow: flow(change.leak_gpm) })
    case 'tankTips':
      return say('exercise.change.tankTips', { site: name(change.dumpSiteId), share: formatShare(change.lostShare) })
    case 'layRate':
      return say(change.rateShare === 1 ? 'exercise.change.layRate.well' : 'exercise.change.layRate.burst', { lay: name(change.layId) })
    case 'moreDemand':
      return say(change.add_gpm < 0 ? 'exercise.change.lessDemand' : 'exercise.change.moreDemand', { flow: flow(Math.abs(change.add_gpm)) })
    case 'demand':
      return say('exercise.change.demand', { flow: flow(change.flow_gpm) })
    case 'roadClosed':
      return say(change.detours.length > 0 ? 'exercise.change.roadClosed' : 'exercise.change.roadClosed.no-way', { road: change.name ?? say('exercise.road.unnamed') })
    case 'roadOpened':
      return say('exercise.change.roadOpened')
    case 'sendTender':
      return say('exercise.change.sendTender', { tender: name(change.tenderId), site: listWords([change.fillSiteId, change.dumpSiteId].flatMap((id) => (id === undefined ? [] : [name(id)]))) })
  }
}

/** When an inject comes. */
export function triggerWords(trigger: Trigger, names: NameOf): string {
  switch (trigger.kind) {
    case 'time':
      return say('exercise.trigger.time', { time: formatClock(trigger.at_s) })
    case 'hand':
      return say('exercise.trigger.hand')
    case 'level':
      return say('exercise.trigger.level', { site: names(trigger.dumpSiteId) ?? trigger.dumpSiteId, share: formatShare(trigger.belowShare) })
    case 'after':
      return say('exercise.trigger.after', { time: formatMinutes(trigger.delay_s), event: say(`exercise.event.${trigger.event}`) })
  }
}

/** A possible trouble in a line: what it is, and whom it strikes. */
export const troubleWords = ({ trouble, subjectIds }: PossibleTrouble, names: NameOf): string =>
  say('exercise.trouble.at', { trouble: say(`exercise.trouble.${trouble}`), subjects: subjectIds.map((id) => names(id) ?? id).join(', ') })

/** A trouble in the words of the radio: from whom, and what they see. */
export const toldWords = ({ trouble, subjectIds }: PossibleTrouble, names: NameOf): string => {
  const [subject = '', place = ''] = subjectIds.map((id) => names(id) ?? id)
  return say(`exercise.told.${trouble}`, { subject, place })
}
