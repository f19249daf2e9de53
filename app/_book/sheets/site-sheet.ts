import { dumpSketch, dumpTanks, fillSketch, sheetKey, siteTraffic, tankSide_ft, whoBringsWhat, ROAD_WIDTH_FT, VEHICLE_LENGTH_FT, VEHICLE_WIDTH_FT, type AnsweredPlan, type PlanPart, type Sketch, type SketchDoubt } from '@/lib/book'
import { distanceM } from '@/lib/geo'
import { findDraftingPump, findDraftSite, findSource, type DumpSite, type Equipment, type FillSite } from '@/lib/plan'
import { crewNeeded, defaults } from '@/lib/supply'
import { formatFrom, formatGiven, formatQuantity, sayIssue, say, thereAndReady } from '@/app/_text'
import '@/app/_text/areas/draft'
import '@/app/_text/areas/book'
import { rangeText } from '@/app/_draft/sheet-words'
import { drawSketch, type SketchWords } from '../draw/draw-sketch'
import { downOf, facts, list, paragraph, sideBySide, space, type Block } from '../page/block'
import { fewestPages } from './fewest-pages'
import { openSheet } from './frame'
import { getAnswered, namesFor, widthOf, type BookKit, type MadeSheet } from './kit'
import { mapBlocks, type MapSetting } from './map-block'
import { cautions, inColumns, note, section, writeIns } from './parts'
import { bringsWords } from './plan-sheet'
import { planMap, siteLetter } from './plan-map'
import { bayWords, dumpResultOf, fillResultOf, liftWords, tankWords } from './site-rows'

const GAP = 14
/** Nearer than this one symbol would lie on the other. */
const SAME_PLACE_M = 30
/* The tighter, the smaller. */
const LEAST_SKETCHES = [205, 190, 180] as const
const LEAST_MAPS = [230, 205, 185] as const
const FACTS = [8.3, 8.1, 7.9] as const
const MOST_SKETCH = 340
/** Heading and room about the sketch. */
const SKETCH_HEAD = 32
type Fact = readonly [name: string, value: string]

/** A fill site for those who set it up: how it lies, a sketch to scale, what is pumped how. */
export function fillSheet(kit: BookKit, planId: string, siteId: string): MadeSheet {
  const answered = getAnswered(kit, planId)
  const { bundle } = answered
  const { plan, district } = bundle
  const { system } = kit
  const index = plan.fillSites.findIndex(({ id }) => id === siteId)
  const site = plan.fillSites[index]
  if (!site) throw new RangeError(`siteId is ${siteId}, must be a fill site of the plan`)
  const names = namesFor(kit, planId)
  const found = fillResultOf(answered, siteId)
  const draftSite = findDraftSite(bundle, site.draftSiteId), source = findSource(bundle, draftSite?.sourceId ?? site.sourceId)
  const pump = findDraftingPump(bundle, site.pumperId)
  const lay = plan.hoseLays?.find((one) => one.toId === siteId && !one.isLeftOut)
  const suction = suctionOf(site, draftSite?.hoseRun_ft, pump)
  const line = site.fillLine
  const lineWords = line ? say('book.fill.line', { size: formatQuantity(line.size_in, 'in', system), length: formatQuantity(line.length_ft, 'ft', system), count: line.lineCount ?? 1 })
    : say('book.site.assumed', { what: say('book.fill.line', { size: formatQuantity(defaults.fillLineSize_in.value, 'in', system), length: formatQuantity(defaults.fillLineLength_ft.value, 'ft', system), count: 1 }) })
  const suctionWords = draftSite?.dryHydrant
    ? say('draft.setup.hydrant', { pipe: formatQuantity(draftSite.dryHydrant.pipe_in, 'in', system) })
    : say('book.fill.suction', { size: formatQuantity(suction.size_in, 'in', system), length: formatQuantity(suction.length_ft, 'ft', system), count: suction.lineCount })
  const sketch = fillSketch({ site, sourceKind: source?.kind, suction_ft: suction.length_ft, lineCount: suction.lineCount, isDryHydrant: draftSite?.dryHydrant !== undefined, isFed: lay !== undefined, traffic: siteTraffic(bundle, siteId) })
  const isHydrant = source?.kind === 'pressureHydrant'
  const rows: Fact[] = [
    [say('book.fill.water'), source ? say('book.fill.source', { name: source.name, kind: say(`choice.kind.${source.kind}`) }) : say('quantity.unknown')],
    [say('draft.title'), draftSite && draftSite.name !== site.name ? draftSite.name : ''],
    [say('book.fill.pumper'), pump ? say('draft.pumper.choice', { name: pump.name, rated: formatQuantity(pump.rated_gpm, 'gpm', system) }) : say('book.site.no-pumper')],
    ...(lay ? [[say('result.lays'), lay.name] as const] : isHydrant ? [] : [[say('draft.setup'), suctionWords] as const]),
    [say('book.fill.height'), isHydrant ? '' : joined([liftWords(found, system), found && found.gaugeLow_inHg !== null && found.gaugeHigh_inHg !== null ? say('book.site.gauge', { gauge: rangeText(found.gaugeLow_inHg, found.gaugeHigh_inHg, 'inHg', system) }) : ''])],
    [say('book.fill.draft'), found && found.draft_gpm !== null ? formatGiven(found.draft_gpm, system) : ''],
    [say('book.fill.lines'), say('book.fill.lines.at', { line: lineWords, pressure: formatQuantity(site.discharge_psi ?? (pump?.kind === 'pumper' ? pump.discharge_psi : undefined) ?? defaults.discharge_psi.value, 'psi', system) })],
    [say('book.site.into'), found ? bayWords(found.bayRate_gpm, kit) : say('quantity.unknown')],
    [say('book.fill.bays'), (site.bayCount ?? 1) > 1 ? say('book.fill.bays.order', { count: site.bayCount ?? 1, order: say(`choice.bayOrder.${site.bayOrder ?? 'together'}`) }) : say('book.site.bays', { count: 1 })],
    [say('book.site.times'), lay && !pump ? thereAndReady({ ready_s: found?.ready_s ?? undefined }, 'lay') : thereAndReady({ ...arrivesAt(answered, site), ready_s: found?.ready_s ?? undefined, setUp_s: site.setUp_s ?? defaults.fillSetUp_s.value }, 'people')],
    [say('book.site.people'), say('book.site.people.fill', { count: crewNeeded(site.bayCount ?? 1) })],
    [say('draft.fact.access'), source?.access ?? ''], [say('book.site.ground'), joined([draftSite?.ground ? say(`choice.ground.${draftSite.ground}`) : '', draftSite?.turnRound ?? ''])],
    [say('book.who.brings'), bringsWords(district.equipment.filter(({ carriedBy }) => carriedBy !== undefined && carriedBy === site.pumperId))],
    [say('book.notes'), site.notes ?? ''],
  ]
  const words: SketchWords = {
    rect: (part, itemId, number) => part === 'tender' ? [say('book.sketch.bay', { number: number ?? 1 }), String(number)] : part === 'waiting' ? [say('book.sketch.waiting')] : part === 'pumper' ? pumperWords(names(itemId ?? '')) : part === 'water' ? [source?.name ?? say('book.fill.water')] : [],
    line: (part) => part === 'suction' ? suctionWords : part === 'fillLine' ? lineWords : part === 'lay' ? (lay?.name ?? '') : part === 'arriving' ? say('book.sketch.arriving-empty') : part === 'leaving' ? say('book.sketch.leaving-loaded') : '',
  }
  return siteSheet(kit, answered, {
    what: say('plan.card.fill'), symbol: 'fillSite', site, letter: siteLetter('F', index, plan.fillSites.length), key: sheetKey({ kind: 'fill', planId, siteId }), rows, sketch, words,
    near: [...(draftSite ? [{ kind: 'draftSite' as const, point: draftSite.point, name: draftSite.name }] : source ? [{ kind: 'source' as const, point: source.point, name: source.name }] : [])],
    cautionKinds: ['banks', 'traffic', 'pressure', 'freezing', ...(isHydrant ? ['cross-connection' as const] : ['contaminated' as const])],
  })
}

/** A dump site for those who set it up: tanks, positions, siphons and pumper to scale. */
export function dumpSheet(kit: BookKit, planId: string, siteId: string): MadeSheet {
  const answered = getAnswered(kit, planId)
  const { bundle } = answered
  const { plan, district } = bundle
  const { system } = kit
  const index = plan.dumpSites.findIndex(({ id }) => id === siteId)
  const site = plan.dumpSites[index]
  if (!site) throw new RangeError(`siteId is ${siteId}, must be a dump site of the plan`)
  const names = namesFor(kit, planId)
  const found = dumpResultOf(answered, siteId)
  const { tanks, isAssumed } = dumpTanks(district, site)
  const pump = findDraftingPump(bundle, site.pumperId)
  const line = site.supplyLine
  const supply = line ? say('book.fill.line', { size: formatQuantity(line.size_in, 'in', system), length: formatQuantity(line.length_ft, 'ft', system), count: line.lineCount ?? 1 }) : pump?.kind === 'pumper' && pump.supplyHose_in !== undefined ? say('book.dump.supply', { size: formatQuantity(pump.supplyHose_in, 'in', system), length: formatQuantity(pump.supplyHose_ft, 'ft', system) }) : ''
  const sketch = dumpSketch(site, tanks, siteTraffic(bundle, siteId))
  const siphonCount = site.tankLink === 'jetSiphon' ? (site.jetSiphonCount ?? Math.max(0, tanks.length - 1)) : 0
  const rows: Fact[] = [
    [say('book.site.tanks'), tanks.length > 1 && found ? say('book.dump.holds', { tanks: tankWords(site, kit), volume: formatQuantity(found.capacity_gal, 'gal', system) }) : tankWords(site, kit)],
    [say('book.dump.sides'), tanks.map((tank) => say('book.dump.side', { side: formatQuantity(tankSide_ft(tank), 'ft', system), height: formatQuantity(tank.height_in, 'in', system) })).join('; ')],
    [say('book.dump.link'), tanks.length > 1 ? say(`choice.tankLink.${site.tankLink ?? 'drains'}`) : ''],
    [say('book.dump.siphons'), siphonCount > 0 ? String(siphonCount) : ''],
    [say('book.dump.keep'), found && found.draftLimit_gal !== null ? say('book.dump.keep.value', { volume: formatQuantity(found.draftLimit_gal, 'gal', system, { style: 'headline', toward: 'up' }) }) : ''],
    [say('book.site.places'), say('book.dump.places', { count: site.positionCount ?? 1, manner: say(`choice.manner.${site.manner ?? 'backIn'}`) })],
    [say('book.site.pumper'), pump ? say('draft.pumper.choice', { name: pump.name, rated: formatQuantity(pump.rated_gpm, 'gpm', system) }) : say('book.site.no-pumper')],
    [say('book.dump.sends'), found && found.pump_gpm !== null ? say(line ? 'book.dump.sends.line' : 'book.dump.sends.value', { flow: formatGiven(found.pump_gpm, system) }) : ''],
    [say('book.dump.line'), supply],
    [say('book.site.times'), say('book.dump.ready', { tanks: found && found.ready_s !== null ? formatFrom(found.ready_s) : say('quantity.unknown'), pump: thereAndReady({ ...arrivesAt(answered, site), ready_s: found?.pumpReady_s ?? undefined, setUp_s: site.pumpSetUp_s ?? defaults.pumpSetUp_s.value }, 'tank') })],
    [say('book.site.people'), say('book.site.people.dump', { count: crewNeeded(site.positionCount ?? 1) })],
    [say('book.who.brings'), bringsWords(district.equipment.filter(({ carriedBy }) => carriedBy !== undefined && carriedBy === site.pumperId))],
    [say('book.notes'), site.notes ?? ''],
  ]
  const tankName = (number: number | undefined): string[] => {
    const tank = tanks[(number ?? 1) - 1]
    const volume = tank ? formatQuantity(tank.capacity_gal, 'gal', system) : ''
    return [say('book.sketch.tank', { number: number ?? 1, volume }), say('book.sketch.tank.short', { number: number ?? 1 })]
  }
  const words: SketchWords = {
    rect: (part, itemId, number) => part === 'tank' ? tankName(number) : part === 'tender' ? [say('book.sketch.position', { number: number ?? 1 }), String(number)] : part === 'nurse' ? [names(itemId ?? '') ?? '', say('book.sketch.nurse')] : part === 'pumper' ? pumperWords(names(itemId ?? '')) : [],
    line: (part) => part === 'suction' ? strainerWords(district.equipment, site.pumperId) : part === 'supplyLine' ? say('book.sketch.to-fire', { hose: supply === '' ? 'none' : supply }) : part === 'siphon' ? say('choice.kind.jetSiphon') : part === 'arriving' ? say('book.sketch.arriving-loaded') : part === 'leaving' ? say('book.sketch.leaving-empty') : '',
  }
  return siteSheet(kit, answered, {
    what: say('plan.card.dump'), symbol: 'dumpSite', site, letter: siteLetter('U', index, plan.dumpSites.length), key: sheetKey({ kind: 'dump', planId, siteId }), rows, sketch, words, near: [],
    cautionKinds: ['traffic', 'pressure', 'freezing', 'fatigue', 'contaminated'], ...(isAssumed && { extra: say('book.dump.assumed') }),
  })
}

type SiteSetting = {
  readonly what: string; readonly symbol: 'fillSite' | 'dumpSite'; readonly site: FillSite | DumpSite; readonly letter: string; readonly key: string; readonly rows: readonly Fact[]
  readonly sketch: Sketch; readonly words: SketchWords; readonly near: MapSetting['places']; readonly cautionKinds: Parameters<typeof cautions>[2]; readonly extra?: string
}

const siteSheet = (kit: BookKit, answered: AnsweredPlan, setting: SiteSetting): MadeSheet => fewestPages((tightness) => setSite(kit, answered, setting, tightness))

function setSite(kit: BookKit, answered: AnsweredPlan, { what, symbol, site, letter, key, rows, sketch, words, near, cautionKinds, extra }: SiteSetting, tightness: 0 | 1 | 2): MadeSheet {
  const least = LEAST_SKETCHES[tightness], leastMap = LEAST_MAPS[tightness]
  const { measure, system } = kit
  const { bundle: { plan }, result } = answered
  const names = namesFor(kit, plan.id)
  const across = widthOf(kit.paper)
  const sheet = openSheet(kit, { what, title: site.name, symbol })
  const half = (across - GAP) * 0.42
  const { places, ways = [] } = planMap(answered, system)
  const setting: MapSetting = {
    places: [{ kind: symbol, point: site.point, name: site.name, letter }, ...near.filter(({ point }) => distanceM(point, site.point) > SAME_PLACE_M), ...places.filter(({ kind, point }) => !(kind === symbol && point === site.point)).map((place) => ({ ...place, isMinor: true }))],
    ways, leastAcross_m: 700, isClose: true,
  }
  sheet.add(paragraph(measure, across, say('book.site.of-plan', { plan: plan.name }), { size: 9.5, weight: 'bold' }, 4))
  const factBlocks = facts(measure, across - GAP - half, rows, FACTS[tightness], 0.36)
  const factsDown = downOf(factBlocks)
  if (factsDown < sheet.left() - 20) sheet.add([sideBySide([{ across: half, blocks: mapBlocks(kit, half, { least: Math.max(leastMap, Math.min(300, factsDown)), most: Math.max(leastMap, Math.min(300, factsDown)) }, setting) }, { across: across - GAP - half, blocks: factBlocks }], GAP), space(2)])
  else sheet.add([...mapBlocks(kit, across, { least: 210, most: 210 }, setting), space(2), ...facts(measure, across, rows, 8.6, 0.27)])

  const issues = result.issues.filter(({ subjectIds }) => subjectIds.includes(site.id))
  const rest = [
    ...sketchNotes(kit, sketch, across), ...(extra === undefined ? [] : list(measure, across, [{ text: extra, sign: '!' }], 8.4)),
    ...section(measure, across, say('result.issues'), inColumns(measure, across, issues.map((issue) => ({ text: sayIssue(issue, names, system), sign: issue.severity === 'note' ? '•' : '!' })), 8.2)),
    ...cautions(measure, across, cautionKinds), space(2),
    ...writeIns(across, ['book.write.in-charge', 'book.write.channel-supply', 'book.write.owner', 'book.write.key']),
  ]
  // The sketch takes what the rest leaves; where that is too little the rest goes over the page.
  const spare = sheet.left() - downOf(rest) - SKETCH_HEAD
  if (spare < least && sheet.left() < least + SKETCH_HEAD) sheet.turn()
  const down = spare >= least ? Math.min(MOST_SKETCH, spare) : Math.max(least, Math.min(MOST_SKETCH, sheet.left() - SKETCH_HEAD))
  sheet.add(section(measure, across, say('book.sketch'), [{ down, draw: (page, x, y) => { drawSketch(page, measure, sketch, { left: x, top: y, right: x + across, bottom: y + down }, system, words) } }]))
  sheet.add(rest)
  return { key, title: site.name, what, symbol, pages: sheet.pages }
}

/** What is there of several, in a line. */
const joined = (texts: readonly string[]): string => texts.filter((text) => text !== '').join('; ')

function sketchNotes({ measure, system }: BookKit, { doubts, x_deg }: Sketch, across: number): Block[] {
  const words = (doubt: SketchDoubt): string => {
    const lengths = { needed: formatQuantity(Math.ceil(doubt.needed_ft), 'ft', system), has: formatQuantity(Math.floor(doubt.has_ft), 'ft', system) }
    return doubt.code === 'hose-short' ? say('book.sketch.hose-short', { number: doubt.number, ...lengths }) : say('book.sketch.front-short', lengths)
  }
  return [
    ...list(measure, across, doubts.map((doubt) => ({ text: words(doubt), sign: '!', isStrong: true })), 8.8),
    ...note(measure, across, say('book.sketch.note', { direction: x_deg === undefined ? 'no' : 'yes', long: formatQuantity(VEHICLE_LENGTH_FT, 'ft', system), wide: formatQuantity(VEHICLE_WIDTH_FT, 'ft', system), road: formatQuantity(ROAD_WIDTH_FT, 'ft', system) })),
  ]
}

/** When the pumper of a site is there, as the plan's sheet has it. */
const arrivesAt = ({ bundle, result }: AnsweredPlan, { id, pumperId }: FillSite | DumpSite): Pick<PlanPart, 'arrive_s' | 'isArrivalAssumed'> => {
  const { arrive_s, isArrivalAssumed } = whoBringsWhat(bundle, result).find(({ apparatusId, placeId }) => apparatusId === pumperId && placeId === id) ?? {}
  return { ...(arrive_s !== undefined && { arrive_s }), ...(isArrivalAssumed && { isArrivalAssumed }) }
}

/** The strainer that rides on the pumper; of several the low-level one, made for tanks. */
function strainerWords(equipment: readonly Equipment[], pumperId: string | undefined): string {
  const styles = equipment.flatMap((item) => (item.kind === 'strainer' && pumperId !== undefined && item.carriedBy === pumperId && item.style !== undefined ? [item.style] : []))
  const style = styles.find((one) => one === 'low-level') ?? styles[0]
  return style ? say(`choice.style.${style}`) : say('choice.kind.strainer')
}

const pumperWords = (name: string | undefined): string[] => [name ?? '', say('choice.kind.pumper'), say('book.sketch.pumper.short')].filter((text) => text !== '')

function suctionOf(site: FillSite, run_ft: number | undefined, pump: ReturnType<typeof findDraftingPump>) {
  const carried = pump?.kind === 'pumper' ? pump : undefined
  return {
    size_in: site.suction?.size_in ?? carried?.suction_in ?? defaults.suctionSize_in.value,
    length_ft: site.suction?.length_ft ?? run_ft ?? carried?.suction_ft ?? defaults.suctionLength_ft.value,
    lineCount: site.suction?.lineCount ?? 1,
  }
}
