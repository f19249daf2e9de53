import { drawInjects, injectFrom, possibleTroubles, type DrawnTrouble, type RoadClosure } from '@/lib/exercise'
import { namesOf, type Bundle, type Exercise } from '@/lib/plan'

/** Words of a trouble, as the screens have them: its title, and how it is told over the radio. */
export type TroubleWords = { readonly [K in 'title' | 'told']: (what: DrawnTrouble['what'], names: (id: string) => string | undefined) => string }

/** Which draw is shipped: any would do, these have troubles of several kinds. */
const SEEDS = { easy: 8, hard: 12 } as const
/** The primer fails when the pumper has been set and is about to draw. */
const BEFORE_DRAWING_S = 60

/**
 * Three exercises that are ready to be led: an easy one, a hard one, and the day the primer fails.
 *
 * @param bundles    the shipped plans with their ways, by the id of the plan
 * @param closuresOf roads of a plan that could be closed
 */
export function demoExercises(bundles: ReadonlyMap<string, Bundle>, words: TroubleWords, closuresOf: (bundle: Bundle) => readonly RoadClosure[]): Exercise[] {
  const make = (id: string, name: string, planId: string, draw: (bundle: Bundle) => readonly DrawnTrouble[]): Exercise[] => {
    const bundle = bundles.get(planId)
    if (!bundle) return []
    const known = namesOf(bundle)
    const injects = draw(bundle).map(({ what, at_s }, i) => ({
      ...injectFrom(what, `${id}-${i + 1}`, words.title(what, (one) => known.get(one)).slice(0, 120), at_s), told: words.told(what, (one) => known.get(one)),
    }))
    return [{ format: 'millrace-exercise', version: 1, id, name, districtId: bundle.district.id, bundle, injects, facts: [], notes: [] }]
  }
  return [
    ...make('exercise-easy', 'Easy: the farmhouse on Gander Hill', 'plan-gander-hill', (bundle) => drawInjects(bundle, SEEDS.easy, 'easy', closuresOf(bundle))),
    ...make('exercise-hard', 'Hard: the school at Dunmarrow', 'plan-school', (bundle) => drawInjects(bundle, SEEDS.hard, 'hard', closuresOf(bundle))),
    ...make('exercise-primer', 'The primer fails: the barn at Yarrow Bank', 'plan-yarrow-bank', primerFails),
  ]
}

/** At the first fill site, just as it would have drawn; then a tender is late, so that the crew has its hands full. */
function primerFails(bundle: Bundle): DrawnTrouble[] {
  const all = possibleTroubles(bundle)
  const primer = all.find(({ trouble }) => trouble === 'primerFails')
  const late = all.find(({ trouble, change }) => trouble === 'unitLate' && change.kind === 'unitLate' && bundle.plan.tenders.some(({ tenderId }) => tenderId === change.unitId))
  return [
    ...(late ? [{ what: late, at_s: Math.floor(late.when.to_s / 120) * 60 }] : []),
    ...(primer ? [{ what: primer, at_s: Math.max(0, primer.when.to_s - BEFORE_DRAWING_S) }] : []),
  ]
}
