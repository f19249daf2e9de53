import type { AnsweredPlan } from '@/lib/book'
import type { DistrictMap } from '@/lib/osm'
import { namesOf, type District, type Plan } from '@/lib/plan'
import { FIRE_GROUND } from '@/lib/supply'
import { say, type NameOf, type UnitSystem } from '@/app/_text'
import type { SiteKind } from '@/app/_look/site-shapes'
import type { Measure } from '../page/measure'
import { MARGIN, papers, type Paper } from '../page/paper'
import type { Page } from '../page/page'

/** All that sheets are made from. */
export type BookKit = {
  readonly measure: Measure
  readonly paper: Paper
  readonly system: UnitSystem
  /** Day of printing, YYYY-MM-DD. */
  readonly day: string
  readonly district: District
  readonly map?: Pick<DistrictMap, 'features'> | undefined
  /** The plans whose sheets are asked for. */
  readonly answered: readonly AnsweredPlan[]
  /** All of the district, by which a draft site knows its pumper. */
  readonly plans: readonly Plan[]
}

/** A sheet, set: its pages without their foot. */
export type MadeSheet = {
  readonly key: string
  readonly title: string
  /** What it is: "Plan", "Fill site". */
  readonly what: string
  readonly symbol: SiteKind
  readonly pages: readonly Page[]
}

/** Width between the margins. */
export const widthOf = (paper: Paper): number => papers[paper].across - MARGIN.left - MARGIN.right

/** Names of everything in a plan, or in the district where no plan is meant. */
export function namesFor({ district, answered }: Pick<BookKit, 'district' | 'answered'>, planId?: string): NameOf {
  const plan = answered.find(({ bundle }) => bundle.plan.id === planId)?.bundle.plan
  const known = plan ? namesOf({ district, plan }) : new Map([district.stations, district.sources, district.draftSites, district.hazards, district.apparatus, district.equipment].flatMap((list) => list.map(({ id, name }): [string, string] => [id, name])))
  const hazard = district.hazards.find(({ id }) => id === plan?.hazardId)?.name
  return (id) => known.get(id) ?? (id === FIRE_GROUND ? (hazard ?? say('plan.fire-ground')) : undefined)
}

/** The plan of a sheet. @throws RangeError if the book has none of that id */
export function getAnswered({ answered }: Pick<BookKit, 'answered'>, planId: string): AnsweredPlan {
  const found = answered.find(({ bundle }) => bundle.plan.id === planId)
  if (!found) throw new RangeError(`planId is ${planId}, must be one of the book's plans`)
  return found
}
