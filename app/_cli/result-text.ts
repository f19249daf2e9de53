import { answerSentences, formatAsked, formatFrom, formatGain, formatGiven, formatMinutes, formatQuantity, formatShare, formatTime, issueLabel, issueLines, linkText, listWords, measureWords, type NameOf, rangeWords, say, type TextKey, timeWords, type UnitSystem } from '@/app/_text'
import { FIRE_GROUND, type SupplyResult } from '@/lib/supply'
import type { Unit } from '@/lib/units'

const flows = ['sustainable_gpm', 'stored_gpm', 'hauledCapacity_gpm', 'hand_gpm', 'needed_gpm'] as const
const times = ['firstArrival_s', 'firstWater_s', 'tankEmpty_s', 'supplyReady_s', 'gap_s', 'short_s'] as const

/** Gains below it are the grid of the search (lib/shuttle). */
const NO_GAIN_GPM = 0.5

/** A result in words, for a terminal: the answer first, then figures, sites, tenders, ways and what to look at. */
export function resultText(result: SupplyResult, itemNames: ReadonlyMap<string, string>, system: UnitSystem): string {
  const names: NameOf = (id) => itemNames.get(id) ?? (id === FIRE_GROUND ? say('plan.fire-ground') : undefined)
  const name = (id: string) => names(id) ?? id
  const time = (value: number | null) => (value === null ? say('quantity.unknown') : formatTime(value))
  const from = (value: number | null) => (value === null ? say('quantity.unknown') : formatFrom(value))
  const flow = (value: number | null) => formatGiven(value, system, result.needed_gpm)
  const show = (value: number | null, unit: Unit) => formatQuantity(value ?? undefined, unit, system)
  const lines = [result.planName, '', ...answerSentences(result, names, system), '']
  const { dependable } = result
  if (dependable)
    lines.push(say('result.dependable-line', {
      flow: flow(dependable.flow_gpm), low: flow(dependable.low_gpm) === flow(dependable.high_gpm) ? 'same' : flow(dependable.low_gpm), high: flow(dependable.high_gpm),
      share: formatShare(dependable.share), error: formatShare(dependable.shareError, 1), count: dependable.nightCount, seed: String(dependable.seed),
    }))
  const { firstToMeasure: measure } = result
  if (measure) lines.push(say('result.measure-line', { what: measureWords(measure, names), range: rangeWords(measure, system), share: formatShare(measure.share) }))
  for (const figure of flows)
    lines.push(`${say(`result.figure.${figure}`, { duration: formatMinutes(result.duration_s) })}: ${figure === 'needed_gpm' ? formatAsked(result[figure], system) : flow(result[figure])}`)
  for (const figure of times) lines.push(`${say(`result.figure.${figure}`)}: ${timeWords(figure, result)}`)
  if (result.links.length > 0) {
    lines.push('', say('result.links'))
    const base_gpm = result.sustainable_gpm ?? 0
    for (const link of result.links)
      lines.push(`  ${say('result.link-gain', { link: linkText(link, names), gain: link.gain_gpm < NO_GAIN_GPM ? 'none' : formatGain(base_gpm, base_gpm + link.gain_gpm, system) })}`)
  }
  lines.push('', say('result.sites'))
  for (const site of result.sites) {
    if (site.kind === 'dumpSite') {
      lines.push(`  ${say('result.dump-site', { name: name(site.id), capacity: show(site.capacity_gal, 'gal'), pump: formatGiven(site.pump_gpm, system), ready: from(site.pumpReady_s) })}`)
      continue
    }
    const rates = listWords(site.bayRate_gpm.map((rate, index) => say('result.rates-by-bays', { rate: formatGiven(rate, system), count: index + 1 })))
    const limit = say(`result.limit.${site.fillLimit ?? 'none'}` as TextKey)
    lines.push(site.draft_gpm === null
      ? `  ${say('result.fill-site-plain', { name: name(site.id), rates, limit, ready: from(site.ready_s) })}`
      : `  ${say('result.fill-site', { name: name(site.id), rates, limit, draft: formatGiven(site.draft_gpm, system), low: show(site.gaugeLow_inHg, 'inHg'), high: show(site.gaugeHigh_inHg, 'inHg'), ready: from(site.ready_s) })}`)
  }
  lines.push('', say('result.tenders'))
  for (const tender of result.tenders)
    lines.push(`  ${tender.cycle_s === null
      ? say('result.tender-out', { name: name(tender.id) })
      : say('result.tender', { name: name(tender.id), usable: show(tender.usable_gal, 'gal'), cycle: time(tender.cycle_s), rounds: tender.rounds ?? 0 })}`)
  if (result.lays) {
    lines.push('', say('result.lays'))
    for (const { id, toId, flow_gpm, start_s, ready_s, fed_gal } of result.lays) {
      const words = { name: name(id), end: name(toId), flow: formatGiven(flow_gpm, system), start: from(start_s), ready: from(ready_s) }
      lines.push(`  ${fed_gal === null ? say('result.lay', words) : say('result.lay-fed', { ...words, volume: show(fed_gal, 'gal') })}`)
    }
  }
  lines.push('', say('result.ways'))
  for (const leg of result.legs)
    lines.push(`  ${say('result.way', {
      name: name(leg.apparatusId), load: leg.load, from: name(leg.fromId), to: name(leg.toId),
      distance: show(leg.distance_mi, 'mi'), time: time(leg.travel_s), by: leg.by ?? 'none', straight: leg.isStraight ? 'yes' : 'no',
    })}`)
  if (result.waterBalance_gal) {
    const { initial_gal, drawn_gal, delivered_gal, stored_gal, inTransit_gal, spilled_gal } = result.waterBalance_gal
    const volume = (value: number) => show(value, 'gal')
    lines.push('', say('result.balance', { initial: volume(initial_gal), drawn: volume(drawn_gal), delivered: volume(delivered_gal), stored: volume(stored_gal), transit: volume(inTransit_gal), spilled: volume(spilled_gal) }))
  }
  if (result.issues.length > 0) {
    lines.push('', say('result.issues'))
    for (const { one, text } of issueLines(result.issues, names, system)) lines.push(`  ${issueLabel(one)}: ${text}`)
  }
  lines.push('', say('result.caution'))
  return lines.join('\n')
}
