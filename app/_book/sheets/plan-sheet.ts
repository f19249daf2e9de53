import { evidenceCounts, sheetKey, whoBringsWhat, type AnsweredPlan, type PlanPart } from '@/lib/book'
import { isCounted, type Equipment } from '@/lib/plan'
import { countUnmeasured } from '@/lib/supply'
import { answerLines, formatAsked, formatFrom, formatGiven, formatMinutes, formatQuantity, formatTime, neverEnoughWords, sayIssue, say, timeShown, timeWords, type NameOf } from '@/app/_text'
import '@/app/_text/areas/advice'
import '@/app/_text/areas/book'
import { facts, list, paragraph, space, table, type Block } from '../page/block'
import { fewestPages } from './fewest-pages'
import { dayWords, openSheet } from './frame'
import { getAnswered, namesFor, widthOf, type BookKit, type MadeSheet } from './kit'
import { mapBlocks } from './map-block'
import { cautions, inColumns, note, section, tiles, warning, writeIns, type Tile } from './parts'
import { planMap, siteLetter } from './plan-map'
import { dumpRows, fillRows } from './site-rows'

/** Least and most height of the map, the tighter the lower; less than the last is not worth its frame. */
const MAPS = [{ least: 270, most: 520 }, { least: 245, most: 400 }, { least: 225, most: 260 }] as const

/** A target hazard with its plan, on both sides of a sheet: the answer and the map in front, who does what and what to mind behind. */
export const planSheet = (kit: BookKit, planId: string): MadeSheet => fewestPages((tightness) => setPlan(kit, planId, tightness))

function setPlan(kit: BookKit, planId: string, tightness: 0 | 1 | 2): MadeSheet {
  const { least, most } = MAPS[tightness]
  const answered = getAnswered(kit, planId)
  const { bundle: { plan }, result } = answered
  const { measure, system, district } = kit
  const across = widthOf(kit.paper)
  const names = namesFor(kit, planId)
  const hazard = district.hazards.find(({ id }) => id === plan.hazardId)
  const head = { what: say('book.sheet.plan'), title: plan.name, symbol: 'fireGround' as const }
  const sheet = openSheet(kit, head)
  sheet.add(paragraph(measure, across, say(hazard ? 'book.plan.hazard' : 'book.plan.no-hazard', { hazard: hazard?.name ?? '' }), { size: 10.5, weight: 'bold' }, 4))
  const lines = answerLines(result, names, system)
  for (const { look, text } of lines) if (look === 'danger') sheet.add([warning(measure, across, text)])
  sheet.add(list(measure, across, lines.filter(({ look }) => look === 'amber').map(({ text }) => ({ text, sign: '!', isStrong: true })), 9.2))
  sheet.add(tiles(measure, across, answerTiles(answered, kit), 3))
  for (const { look, text } of lines) if (look === 'plain') sheet.add(paragraph(measure, across, text, { size: 9.2 }, 4))

  const setting = planMap(answered, system)
  if (setting.places.some(({ isMinor }) => !isMinor)) {
    if (sheet.left() < least) sheet.turn()
    sheet.add(mapBlocks(kit, across, { least, most: Math.min(most, sheet.left()) }, setting))
  }

  sheet.add(section(measure, across, say('book.who'), table(measure, across, [
    { head: say('book.who.unit'), share: 2.2 }, { head: say('book.who.task'), share: 3.4 }, { head: say('book.who.there'), share: 1.3, align: 'right' }, { head: say('book.who.brings'), share: 3 },
  ], whoBringsWhat(bundleOf(answered), result).map((part) => [
    { text: names(part.apparatusId) ?? part.apparatusId, isStrong: true, quiet: fromWords(part, names) },
    { text: taskWords(part, names), quiet: roundWords(part, kit) },
    part.arrive_s === undefined ? say('quantity.unknown') : { text: formatFrom(part.arrive_s), quiet: part.isArrivalAssumed ? say('evidence.assumed') : '' },
    bringsWords(part.brings) || say('book.none'),
  ]), 8.6, 3.5)))
  sheet.add([space(3), ...paragraph(measure, across, timeWordsOf(answered), { size: 9.2, weight: 'bold' }, 1)])
  sheet.add(section(measure, across, say('book.sites'), [
    ...table(measure, across, [{ head: say('plan.card.fill'), share: 2.4 }, { head: say('book.site.water'), share: 2 }, { head: say('book.site.draft'), share: 1.5 }, { head: say('book.site.into'), share: 2.1 }, { head: say('book.site.ready'), share: 1.1, align: 'right' }], fillRows(answered, kit, (i) => siteLetter('F', i, plan.fillSites.length))),
    space(6),
    ...table(measure, across, [{ head: say('plan.card.dump'), share: 2.4 }, { head: say('book.site.tanks'), share: 2 }, { head: say('book.site.places'), share: 1.5 }, { head: say('book.site.pumper'), share: 2.1 }, { head: say('book.site.ready'), share: 1.1, align: 'right' }], dumpRows(answered, kit, (i) => siteLetter('U', i, plan.dumpSites.length))),
  ]))
  sheet.add(section(measure, across, say('book.ways'), wayTable(answered, kit, across, names)))
  const lays = (plan.hoseLays ?? []).filter(isCounted)
  if (lays.length > 0) sheet.add(section(measure, across, say('book.lays'), list(measure, across, lays.map(({ id, name, toId }) => {
    const found = result.lays?.find((lay) => lay.id === id)
    return { text: found ? say('result.lay', { name, end: names(toId) ?? toId, flow: formatGiven(found.flow_gpm, system), ready: formatFrom(found.ready_s), start: formatFrom(found.start_s) }) : name }
  }))))
  const sentences = (isNote: boolean) => [...new Set(result.issues.filter(({ severity }) => (severity === 'note') === isNote).map((issue) => sayIssue(issue, names, system)))]
  const [bad, notes] = [sentences(false), sentences(true)]
  sheet.add(section(measure, across, say('result.issues'), [
    ...list(measure, across, bad.map((text) => ({ text, sign: '!' })), 8.8),
    ...inColumns(measure, across, notes.map((text) => ({ text })), 8),
  ]))
  sheet.add(cautions(measure, across, ['bridges', 'traffic', 'banks', 'pressure', 'freezing', 'fatigue']))
  sheet.add(section(measure, across, say('book.contacts'), writeIns(across, ['book.write.dispatch', 'book.write.command', 'book.write.supply', 'book.write.owner', 'book.write.mutual-aid', 'book.write.roads', 'book.write.key', 'book.write.utilities', 'book.write.channel-command', 'book.write.channel-supply'], 3)))
  sheet.add(section(measure, across, say('book.evidence'), evidenceBlocks(answered, kit, across)))
  return { key: sheetKey({ kind: 'plan', planId }), title: head.title, what: head.what, symbol: head.symbol, pages: sheet.pages }
}

const bundleOf = ({ bundle }: AnsweredPlan) => bundle

/** Dependable, expected, needed; from when; how long; the gap. */
function answerTiles({ result }: AnsweredPlan, { system }: BookKit): Tile[] {
  const { dependable, sustainable_gpm, needed_gpm, supplyReady_s, duration_s } = result
  const gap = timeShown('gap_s', result)
  const never = neverEnoughWords(result, system)
  return [
    { label: say('book.fig.dependable'), value: dependable ? formatGiven(dependable.flow_gpm, system, needed_gpm) : say('book.fig.untested'), isStrong: true },
    { label: say('book.fig.expected'), value: sustainable_gpm === null ? say('book.fig.none') : formatGiven(sustainable_gpm, system, needed_gpm) },
    { label: say('book.fig.needed'), value: needed_gpm === null ? say('quantity.unknown') : formatAsked(needed_gpm, system) },
    { label: say('book.fig.ready'), value: supplyReady_s === null ? say('book.fig.never') : formatFrom(supplyReady_s), ...(never !== undefined && { note: never }), isStrong: true },
    { label: say('result.figure.gap_s'), value: gap.value, ...(gap.ask !== undefined && { note: gap.ask }) },
    { label: say('book.fig.held'), value: formatMinutes(duration_s) },
  ]
}

/** First arrival, first water, tank empty, supply ready, time short: in a line. */
function timeWordsOf({ result }: AnsweredPlan): string {
  return say('book.times', { times: lineTimes.map((figure) => say('book.times.one', { name: say(`result.figure.${figure}`), time: timeWords(figure, result) })).join('; ') })
}

const lineTimes = ['firstArrival_s', 'firstWater_s', 'tankEmpty_s', 'supplyReady_s', 'short_s'] as const

function fromWords({ stationId, isMutualAid }: PlanPart, names: NameOf): string {
  const station = stationId === undefined ? say('book.who.no-station') : (names(stationId) ?? stationId)
  return isMutualAid && !/mutual aid/i.test(station) ? say('advice.request.mutual-aid', { station }) : station
}

const taskWords = ({ task, placeId, dumpSiteId }: PlanPart, names: NameOf): string =>
  say(`book.task.${task}`, { place: names(placeId) ?? placeId, dump: dumpSiteId === undefined ? '' : (names(dumpSiteId) ?? dumpSiteId) })

const roundWords = ({ usable_gal, cycle_s }: PlanPart, { system }: BookKit): string =>
  usable_gal === undefined || cycle_s === undefined ? '' : say('book.task.round', { load: formatQuantity(usable_gal, 'gal', system), round: formatTime(cycle_s) })

/** What rides on a vehicle, alike things counted. */
export function bringsWords(items: readonly Equipment[]): string {
  const counts = new Map<string, number>()
  for (const { name, count = 1 } of items) counts.set(name, (counts.get(name) ?? 0) + count)
  return [...counts].map(([name, count]) => (count > 1 ? say('book.brings.count', { count, name }) : name)).join('; ')
}

/** Each pair of sites once: how far, how long loaded and empty, by which roads. */
function wayTable({ bundle, result }: AnsweredPlan, { measure, system }: BookKit, across: number, names: NameOf): Block[] {
  const fillIds = new Set<string>(bundle.plan.fillSites.map(({ id }) => id))
  const pairs = new Map<string, { fillId: string; dumpId: string }>()
  for (const { fromId, toId } of result.legs) if (fillIds.has(fromId)) pairs.set(`${fromId} ${toId}`, { fillId: fromId, dumpId: toId })
  const rows = [...pairs.values()].map(({ fillId, dumpId }) => {
    const full = result.legs.filter(({ fromId, toId }) => fromId === fillId && toId === dumpId), empty = result.legs.filter(({ fromId, toId }) => fromId === dumpId && toId === fillId)
    const slowest = (legs: typeof full) => legs.filter(({ travel_s }) => travel_s !== null).sort((a, b) => (b.travel_s ?? 0) - (a.travel_s ?? 0))[0]
    const words = (legs: typeof full) => {
      const leg = slowest(legs)
      return leg?.travel_s === undefined || leg.travel_s === null ? say('book.way.none') : { text: formatTime(leg.travel_s), quiet: say('book.way.by', { distance: formatQuantity(leg.distance_mi ?? undefined, 'mi', system), by: leg.by ?? 'none', straight: leg.isStraight ? 'yes' : 'no' }) }
    }
    const leg = bundle.legs.find(({ key }) => key === slowest(full)?.key)
    const roads = leg && leg.by !== 'none' ? (leg.roads ?? []).filter((road, i, all) => road !== '' && road !== all[i - 1]) : []
    return [{ text: say('book.way.pair', { fill: names(fillId) ?? fillId, dump: names(dumpId) ?? dumpId }), isStrong: true }, words(full), words(empty), roads.join(', ') || say('book.way.no-roads')]
  })
  return rows.length === 0 ? [] : [...table(measure, across, [{ head: say('book.way.between'), share: 2.6 }, { head: say('book.way.loaded'), share: 1.7 }, { head: say('book.way.empty'), share: 1.7 }, { head: say('book.way.roads'), share: 3.2 }], rows), ...note(measure, across, say('book.way.slowest'))]
}

function evidenceBlocks({ bundle: { plan }, result }: AnsweredPlan, kit: BookKit, across: number): Block[] {
  const { measure, district, day } = kit
  const counts = evidenceCounts(district, plan)
  return facts(measure, across, [
    [say('book.evidence.printed'), say('book.evidence.printed.value', { day: dayWords(day), latest: counts.latest === undefined ? say('book.evidence.never') : dayWords(counts.latest) })],
    [say('book.evidence.numbers'), say('book.evidence.counts', { measured: counts.measured, ...countUnmeasured(result) })],
    ...(plan.notes ? [[say('book.notes'), plan.notes] as const] : []),
  ], 8.4, 0.2)
}
