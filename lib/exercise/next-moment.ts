import type { EventKind } from '../shuttle'
import { recordOf, type Session } from './session'
import { firstTrigger } from './trigger'
import { nextEventAt } from './view'

/** What a table talks about when it happens. A tender that takes its place is not among it: that happens every other minute. */
const telling = ['engine-arrives', 'first-water', 'engine-empty', 'supply-ready', 'demand', 'draft-lost', 'draft-back', 'booster-empty', 'source-empty', 'source-recovers', 'lay-flow'] as const satisfies readonly EventKind[]
export type TellingEvent = (typeof telling)[number]

/** The next thing of an exercise that matters: a trouble that comes, something that befalls the water, or else whatever is next. */
export type NextMoment = { readonly at_s: number } & ({ readonly kind: 'trouble'; readonly title: string } | { readonly kind: TellingEvent; readonly siteId?: string } | { readonly kind: 'other' })

/** So far ahead is looked: longer than a table waits for anything. */
const AHEAD_S = 4 * 3600

/**
 * The next moment after the clock that matters to those at the table.
 *
 * @returns undefined where nothing more will happen
 */
export function nextMoment(session: Session): NextMoment | undefined {
  const { clock_s } = session
  const trouble = firstTrigger(session, clock_s + AHEAD_S)
  const event = recordOf(session.now, clock_s + AHEAD_S).log.find(({ time_s, kind }) => time_s > clock_s && isTelling(kind))
  if (trouble && trouble.at_s <= (event?.time_s ?? Infinity)) return { at_s: trouble.at_s, kind: 'trouble', title: trouble.inject.title }
  if (event) return { at_s: event.time_s, kind: event.kind as TellingEvent, ...(event.siteId !== undefined && { siteId: event.siteId }) }
  const at_s = nextEventAt(session)
  return at_s === undefined ? undefined : { at_s, kind: 'other' }
}

const isTelling = (kind: EventKind): kind is TellingEvent => telling.some((one) => one === kind)
