import type { Issue } from '../issue'
import type { Link } from './result'

/** What a person has not entered, or has entered against the rules: the form goes on, nobody is without water. */
const unfinished: ReadonlySet<string> = new Set([
  'plan-without-fill-site', 'plan-without-dump-site', 'plan-without-tender', 'fill-site-without-pumper', 'fill-pumper-cannot-draft', 'pumper-without-rating',
  'dump-site-without-tank', 'not-a-portable-tank', 'not-a-tender', 'tender-without-tank', 'tender-twice', 'nurse-hauls', 'pumper-in-two-places',
  'place-missing', 'id-unresolved', 'plan-of-other-district', 'spec-out-of-range',
])

/** No water, or less than is needed, worst first. */
const losses: readonly string[] = ['water-gap', 'short-of-need', 'flow-short', 'draft-lost', 'source-empty', 'lay-source-empty']

/** The whole flow stands on it. */
const carriesAll: ReadonlySet<string> = new Set(['dump-pumper-assumed', 'fill-pumper-assumed', 'dump-tank-assumed', 'fill-water-unnamed', 'dump-line-unsaid', 'dump-line-short', 'dump-hose-short', 'dump-hose-thin', 'source-volume-unknown', 'source-flow-unknown'])

/** Whether an issue that blocks only says that something is still to be entered. */
export const isUnfinished = ({ code }: Issue): boolean => unfinished.has(code)

/** Whether an issue says that the fire ground goes without water, or with less than it needs. */
export const isLoss = ({ code }: Issue): boolean => losses.includes(code)

export type IssueEffects = { readonly sustainable_gpm: number | null; readonly links: readonly Pick<Link, 'subjectId' | 'gain_gpm'>[]; readonly tenderCount: number }

/**
 * Issues by what they do to the flow, greatest first:
 *
 * 1. what makes the plan impossible, then what is still to be entered;
 * 2. no water, short of the need, the draft lost, a source run dry;
 * 3. other warnings, by flow at stake: all of it where the plan stands on something nobody chose; the share of one
 *    tender where one is left out; else what a tenth better would bring at the place the issue is about;
 * 4. notes, in the same way.
 *
 * Equal ones keep the order in which they were found.
 */
export function inOrderOfEffect(issues: readonly Issue[], effects: IssueEffects): Issue[] {
  const tier = (one: Issue): number => {
    if (one.severity === 'block') return isUnfinished(one) ? 1 : 0
    if (isLoss(one)) return 2 + losses.indexOf(one.code) / losses.length
    return one.severity === 'warn' ? 3 : 4
  }
  return [...issues].sort((a, b) => tier(a) - tier(b) || atStake_gpm(b, effects) - atStake_gpm(a, effects))
}

function atStake_gpm({ code, subjectIds }: Issue, { sustainable_gpm, links, tenderCount }: IssueEffects): number {
  const all_gpm = sustainable_gpm ?? 0
  if (carriesAll.has(code)) return all_gpm
  if (code === 'tender-cannot-reach') return all_gpm / Math.max(1, tenderCount)
  return Math.max(0, ...links.filter(({ subjectId }) => subjectIds.includes(subjectId)).map(({ gain_gpm }) => gain_gpm))
}
