import { unprovenKinds, unprovenOf, type Trial } from '@/lib/advise'
import { listWords, say, type NameOf } from '../_text'
import '../_text/areas/advice'

/** What a change stands on, by its places: "To look at or measure first: the lift at Kettle Pond bank and …". */
export function unprovenText(trial: Trial, names: NameOf): string {
  const list = unprovenOf(trial).map(({ kind, subjectId }) => say(`advice.unproven.at.${kind}`, { place: names(subjectId) ?? subjectId }))
  return say('advice.unproven.of', { list: listWords(list) })
}

/** What the changes of a list stand on, all that occurs and nothing else. */
export function unprovenLead(trials: readonly Trial[]): string {
  const found = new Set(trials.flatMap((trial) => unprovenOf(trial).map(({ kind }) => kind)))
  return say('advice.unproven.text', { what: listWords(unprovenKinds.filter((kind) => found.has(kind)).map((kind) => say(`advice.unproven.kind.${kind}`)), 'any') })
}
