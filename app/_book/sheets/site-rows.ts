import { dumpTanks, type AnsweredPlan } from '@/lib/book'
import { findApparatus, type DumpSite } from '@/lib/plan'
import type { DumpSiteResult, FillSiteResult } from '@/lib/supply'
import { formatFrom, formatGiven, formatQuantity, say, type UnitSystem } from '@/app/_text'
import '@/app/_text/areas/book'
import { rangeText } from '@/app/_draft/sheet-words'
import type { Cell } from '../page/block'
import { namesFor, type BookKit } from './kit'

export const fillResultOf = ({ result }: AnsweredPlan, id: string): FillSiteResult | undefined => result.sites.find((site): site is FillSiteResult => site.kind === 'fillSite' && site.id === id)
export const dumpResultOf = ({ result }: AnsweredPlan, id: string): DumpSiteResult | undefined => result.sites.find((site): site is DumpSiteResult => site.kind === 'dumpSite' && site.id === id)

const known = (time_s: number | null | undefined): string => (typeof time_s === 'number' ? formatFrom(time_s) : say('book.fig.dash'))

/** Rates into a tender by how many bays are busy: "650 gpm, 340 gpm each with 2 busy". */
export function bayWords(rates: readonly number[], { system }: Pick<BookKit, 'system'>): string {
  const [alone, ...more] = rates
  if (alone === undefined) return say('quantity.unknown')
  const together = more.at(-1)
  return together === undefined ? formatGiven(alone, system) : say('book.site.rates', { alone: formatGiven(alone, system), together: formatGiven(together, system), count: rates.length })
}

/** Portable tanks in a line: "3,000 + 2,100 gal". */
export function tankWords(site: DumpSite, { district, system }: Pick<BookKit, 'district' | 'system'>): string {
  const nurse = findApparatus({ district }, site.nurseId)
  if (nurse) return say('book.site.nurse', { name: nurse.name })
  const { tanks, isAssumed } = dumpTanks(district, site)
  const words = tanks.map(({ capacity_gal }) => formatQuantity(capacity_gal, 'gal', system)).join(' + ')
  return isAssumed ? say('book.site.assumed', { what: words }) : words
}

/** The lift counted, and what of it the season adds: "lift 9.5 ft, of it 3 ft for the dry season". */
export function liftWords(found: FillSiteResult | undefined, system: UnitSystem): string {
  if (!found || found.lift_ft === null) return ''
  const lift = formatQuantity(found.lift_ft, 'ft', system)
  const drop_ft = found.seasonDrop_ft ?? 0
  const known = found.liftFrom === 'assumed' ? say('book.site.assumed', { what: lift }) : lift
  return drop_ft > 0 ? say('book.site.lift.season', { lift: known, drop: formatQuantity(drop_ft, 'ft', system) }) : say('book.site.lift', { lift: known })
}

/** Fill sites of a plan in rows: name and pumper, water and lift, draft and gauge, rate into a tender, when ready. */
export function fillRows(answered: AnsweredPlan, kit: BookKit, letter: (index: number) => string): Cell[][] {
  const { bundle: { plan } } = answered
  const { system } = kit
  const names = namesFor(kit, plan.id)
  return plan.fillSites.map((site, i): Cell[] => {
    const found = fillResultOf(answered, site.id)
    const gauge = found && found.gaugeLow_inHg !== null && found.gaugeHigh_inHg !== null ? say('book.site.gauge', { gauge: rangeText(found.gaugeLow_inHg, found.gaugeHigh_inHg, 'inHg', system) }) : ''
    return [
      { text: say('book.site.name', { letter: letter(i), name: site.name }), isStrong: true, quiet: names(site.pumperId ?? '') ?? say('book.site.no-pumper') },
      { text: names(site.draftSiteId ?? '') ?? names(site.sourceId ?? '') ?? say('book.site.no-source'), quiet: liftWords(found, system) },
      { text: found && found.draft_gpm !== null ? formatGiven(found.draft_gpm, system) : say('book.fig.dash'), quiet: gauge },
      { text: found ? bayWords(found.bayRate_gpm, kit) : say('book.fig.dash'), quiet: say('book.site.bays', { count: site.bayCount ?? 1 }) },
      known(found?.ready_s),
    ]
  })
}

/** Dump sites of a plan in rows. */
export function dumpRows(answered: AnsweredPlan, kit: BookKit, letter: (index: number) => string): Cell[][] {
  const { bundle: { plan } } = answered
  const names = namesFor(kit, plan.id)
  return plan.dumpSites.map((site, i): Cell[] => {
    const found = dumpResultOf(answered, site.id)
    return [
      { text: say('book.site.name', { letter: letter(i), name: site.name }), isStrong: true },
      { text: tankWords(site, kit), quiet: site.tankLink === undefined || site.nurseId !== undefined ? '' : say(`choice.tankLink.${site.tankLink}`) },
      { text: say('book.site.positions', { count: site.positionCount ?? 1 }), quiet: say(`choice.manner.${site.manner ?? 'backIn'}`) },
      { text: names(site.pumperId ?? '') ?? say('book.site.no-pumper'), quiet: found && found.pump_gpm !== null ? say('book.site.sends', { flow: formatGiven(found.pump_gpm, kit.system), hose: site.supplyLine ? 'counted' : 'none' }) : '' },
      known(found?.pumpReady_s ?? found?.ready_s),
    ]
  })
}
