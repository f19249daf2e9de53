import { highestLiftFor_ft } from '@/lib/hydraulics'
import { sheetKey } from '@/lib/book'
import type { DraftSite, Plan, Pumper } from '@/lib/plan'
import { backUpCard, type BackUpCard } from '@/lib/priming'
import { backUpInputs, findDraftSheet, primingOf, sourceGaps, type BackUpInputs, type DraftSheet } from '@/lib/supply'
import { budgetWords, giveUpWords, inputWords, isAllMeasured, stepWords, verdictWords, windowWords, type InputWords } from '@/app/_draft/card/card-words'
import { isLiftAssumed, liftSum, liftText, placeDoubt } from '@/app/_draft/lift-words'
import { isFallUnknown, seasonText } from '@/app/_draft/season-words'
import { flowText, rangeText, setupText } from '@/app/_draft/sheet-words'
import { sitePumper, type SitePumper } from '@/app/_draft/site-pumper'
import { trialOf } from '@/app/_draft/trial-of'
import { formatAbout, formatGiven, formatPoint, formatQuantity, formatTime, sayIssue, say } from '@/app/_text'
import '@/app/_text/areas/draft'
import '@/app/_text/areas/book'
import { downOf, facts, framed, heading, insideFrame, list, paragraph, sideBySide, space, table, type Block, type Cell } from '../page/block'
import { LEADING, wrap, type Measure } from '../page/measure'
import { fewestPages } from './fewest-pages'
import { dayWords, openSheet } from './frame'
import { namesFor, widthOf, type BookKit, type MadeSheet } from './kit'
import { mapBlocks } from './map-block'
import { cautions, inColumns, section, tiles, warning, writeIns, type Tile } from './parts'
import { minorPlaces } from './plan-map'

const GAP = 14
/* The tighter, the smaller. */
const FACTS = [8.4, 8.2, 7.9] as const
const LEAST_MAPS = [205, 185, 165] as const
const TABLE_PADS = [2.6, 1.8, 1.2] as const
const CARD_SIZES = [1.06, 1, 0.96, 0.92, 0.88] as const

/** A draft site for the pumper's crew: how to get in, what to set up, what the gauge should read; behind it the back-up prime card. */
export function draftSiteSheet(kit: BookKit, draftSiteId: string): MadeSheet {
  const worked = workOut(kit, draftSiteId)
  return fewestPages((tightness) => setDraftSite(kit, worked, tightness))
}

/** All that is reckoned for a sheet, however tight it is set. */
type WorkedSite = {
  readonly draftSite: DraftSite
  readonly pumper: SitePumper
  readonly sheet: DraftSheet | undefined
  readonly figures: readonly Tile[]
  readonly pumperRows: readonly (readonly Cell[])[]
  readonly backUp: BackUp | undefined
}
type BackUp = { readonly inputs: BackUpInputs; readonly card: BackUpCard }

function workOut(kit: BookKit, draftSiteId: string): WorkedSite {
  const { district, plans } = kit
  const draftSite = district.draftSites.find(({ id }) => id === draftSiteId)
  if (!draftSite) throw new RangeError(`draftSiteId is ${draftSiteId}, must be a draft site of the district`)
  const pumps = district.apparatus.filter((one) => one.kind !== 'tender')
  const pumper = sitePumper({ pumps, draftSiteId, others: plans })
  const { pump } = pumper
  const plan = plans.find(({ fillSites }) => fillSites.some((site) => site.draftSiteId === draftSiteId))
  const sheet = pump && findDraftSheet(district, draftSite, pump, trialOf(plan, draftSiteId))
  return {
    draftSite, pumper, sheet, figures: sheet ? draftTiles(sheet, kit) : [], pumperRows: pumperRows(kit, draftSite, plan),
    backUp: sheet && pump.kind === 'pumper' ? backUpOf(sheet, pump) : undefined,
  }
}

function backUpOf(sheet: DraftSheet, pump: Pumper): BackUp {
  const inputs = backUpInputs(pump, sheet)
  return { inputs, card: backUpCard(inputs.rig, inputs.site, inputs.openDischarge_gpm) }
}

function setDraftSite(kit: BookKit, { draftSite, pumper: { pump, from, planName }, sheet, figures, pumperRows, backUp }: WorkedSite, tightness: 0 | 1 | 2): MadeSheet {
  const { district, measure, system } = kit
  const draftSiteId = draftSite.id
  const across = widthOf(kit.paper)
  const names = namesFor(kit)
  const source = district.sources.find(({ id }) => id === draftSite.sourceId)
  const open = openSheet(kit, { what: say('draft.title'), title: draftSite.name, symbol: 'draftSite' })

  if (pump && sheet) {
    const isImpossible = sheet.capacity.limitedBy === 'lift'
    open.add(paragraph(measure, across, say('book.draft.for', { pump: pump.name, from, plan: planName ?? '' }), { size: 10, weight: 'bold' }, 4))
    if (isImpossible) open.add([warning(measure, across, say('draft.sentence.impossible', { pump: pump.name, lift: liftText(sheet, system), over: formatQuantity(sheet.capacity.overLift_ft, 'ft', system), most: formatQuantity(sheet.capacity.zeroFlowLift_ft, 'ft', system) }))])
    open.add(tiles(measure, across, figures, 3))
    const doubt = placeDoubt(sheet, system)
    open.add(paragraph(measure, across, [seasonText(sheet, system), doubt ?? ''].filter((text) => text !== '').join(' '), { size: 9, ...(isFallUnknown(sheet) && { weight: 'bold' as const }) }))
  } else open.add([warning(measure, across, say(pump ? 'draft.no-rating' : 'draft.no-pump'))])

  const half = (across - GAP) * 0.46
  const setting = {
    places: [
      { kind: 'draftSite' as const, point: draftSite.point, name: draftSite.name },
      ...minorPlaces(district, system, ['roadNote', 'hazard', 'station']),
    ],
    leastAcross_m: 650,
  }
  const factBlocks = facts(measure, across - GAP - half, [
    [say('book.draft.water'), source ? say('book.fill.source', { name: source.name, kind: say(`choice.kind.${source.kind}`) }) : say('draft.no-source')],
    [say('book.draft.place'), formatPoint(draftSite.point)],
    [say('draft.fact.access'), source?.access ?? say('quantity.unknown')],
    [say('draft.fact.turn'), draftSite.turnRound ?? say('quantity.unknown')],
    [say('draft.fact.ground'), draftSite.ground ? say(`choice.ground.${draftSite.ground}`) : say('quantity.unknown')],
    [say('draft.setup'), sheet ? setupText(sheet.suction, system) : ''],
    [say('book.draft.depth'), draftSite.waterDepth_ft === undefined ? say('quantity.unknown') : formatQuantity(draftSite.waterDepth_ft, 'ft', system)],
    [say('book.draft.over'), draftSite.strainerCover_ft === undefined ? say('quantity.unknown') : formatQuantity(draftSite.strainerCover_ft, 'ft', system)],
    [say('book.draft.usable'), sheet?.water.usable_gal === undefined || sheet.water.volumeFrom === 'stream' ? '' : formatAbout(sheet.water.usable_gal, 'gal', system)],
    [say('draft.source.inflow'), sheet?.water.inflow_gpm === undefined ? '' : formatGiven(sheet.water.inflow_gpm, system)],
    [say('draft.fact.tested'), source?.testedOn === undefined ? say('book.draft.never') : dayWords(source.testedOn)],
    [say('draft.fact.inspection'), source?.inspectionDue === undefined ? '' : `${dayWords(source.inspectionDue)}${source.inspectionDue < kit.day ? ` (${say('draft.fact.overdue')})` : ''}`],
    [say('book.notes'), [source?.notes, draftSite.notes].filter(Boolean).join(' ')],
  ], FACTS[tightness], 0.36)
  const factsDown = downOf(factBlocks)
  const size = Math.max(LEAST_MAPS[tightness], Math.min(290, factsDown))
  if (factsDown < open.left() - 20) open.add([sideBySide([{ across: half, blocks: mapBlocks(kit, half, { least: size, most: size }, setting) }, { across: across - GAP - half, blocks: factBlocks }], GAP)])
  else open.add([...mapBlocks(kit, across, { least: 220, most: 220 }, setting), ...factBlocks])

  open.add(section(measure, across, say('book.draft.pumpers'), pumperTable(measure, pumperRows, across, TABLE_PADS[tightness])))
  const issues = [...(sheet?.issues ?? [])]
  open.add(section(measure, across, say('result.issues'), inColumns(measure, across, [
    ...issues.map((issue) => ({ text: sayIssue(issue, names, system), sign: issue.severity === 'note' ? '•' : '!' })),
    ...(source ? sourceGaps(source).map((gap) => ({ text: say(`draft.gap.${gap}`), sign: '?' })) : []),
  ], 8.2)))
  open.add(cautions(measure, across, ['banks', 'traffic', 'freezing', 'contaminated']))
  open.add([space(2), ...writeIns(across, ['book.write.owner', 'book.write.key'])])
  if (sheet && backUp) {
    open.turn()
    // Set as large as goes on one side.
    const fitting = CARD_SIZES.map((k) => cardBlocks(kit, sheet, backUp, across, k)).find((blocks) => downOf(blocks) <= open.left())
    open.add(fitting ?? cardBlocks(kit, sheet, backUp, across, 1))
  }
  return { key: sheetKey({ kind: 'draft', draftSiteId }), title: draftSite.name, what: say('draft.title'), symbol: 'draftSite', pages: open.pages }
}

function draftTiles(sheet: DraftSheet, { system }: BookKit): Tile[] {
  const { capacity, pump, lift } = sheet
  const isImpossible = capacity.limitedBy === 'lift'
  const prime = pump.kind === 'pumper' ? primingOf(sheet, pump).time : undefined
  const most_ft = capacity.limitedBy === 'pump' ? highestLiftFor_ft(sheet, capacity.flow_gpm) : capacity.zeroFlowLift_ft
  return [
    { label: say('draft.gauge'), value: isImpossible ? say('book.fig.dash') : rangeText(capacity.vacuumLow_inHg, capacity.vacuumHigh_inHg, 'inHg', system), note: say('book.draft.gauge'), isStrong: true },
    { label: say('draft.flow'), value: isImpossible ? say('book.fig.none') : flowText(capacity, system), note: say(`draft.limits.${capacity.limitedBy}`), isStrong: true },
    { label: say('draft.lift'), value: formatQuantity(lift.lift_ft, 'ft', system), note: liftSum(sheet, system) ?? say(`draft.lift.${isLiftAssumed(sheet) ? 'assumed' : lift.from}`) },
    { label: say('draft.cover'), value: capacity.strainerCover && !isImpossible ? formatQuantity(capacity.strainerCover.advised_ft, 'ft', system) : say('book.fig.dash'), note: say('book.draft.cover') },
    { label: say('draft.prime.time'), value: prime?.expected_s === undefined ? say(prime ? 'draft.prime.never' : 'book.fig.dash') : formatTime(prime.expected_s), note: prime ? say('book.draft.limit', { limit: formatTime(prime.limit_s), within: prime.expected_s !== undefined && prime.expected_s <= prime.limit_s ? 'yes' : 'no' }) : '' },
    { label: say(capacity.limitedBy === 'pump' ? 'draft.highest' : 'draft.ends'), value: formatQuantity(most_ft, 'ft', system), note: say(capacity.limitedBy === 'pump' ? 'draft.highest.note' : 'draft.ends.note') },
  ]
}

/** What each pumper of the district draws here through its own hose: the one that comes may be another. */
function pumperRows({ district, system }: BookKit, draftSite: DraftSite, plan: Plan | undefined): Cell[][] {
  return district.apparatus.flatMap((pump) => {
    const sheet = pump.kind === 'tender' ? undefined : findDraftSheet(district, draftSite, pump, plan?.season ? { season: plan.season } : {})
    if (!sheet) return []
    const { capacity } = sheet
    const isImpossible = capacity.limitedBy === 'lift'
    return [[
      { text: pump.name, isStrong: true }, setupText(sheet.suction, system),
      isImpossible ? say('book.draft.no-water') : { text: formatGiven(capacity.flow_gpm, system), isStrong: true },
      isImpossible ? say('book.fig.dash') : rangeText(capacity.vacuumLow_inHg, capacity.vacuumHigh_inHg, 'inHg', system), say(`draft.limit.${capacity.limitedBy}`),
    ]]
  })
}

function pumperTable(measure: Measure, rows: readonly (readonly Cell[])[], across: number, pad: number): Block[] {
  return rows.length === 0 ? [] : table(measure, across, [{ head: say('draft.pumper'), share: 2.6 }, { head: say('draft.setup'), share: 4.4 }, { head: say('draft.flow'), share: 1.4, align: 'right' }, { head: say('draft.gauge'), share: 1.6, align: 'right' }, { head: say('book.draft.limit-head'), share: 1.4 }], rows, 8.4, pad)
}

/** The back-up prime card in the words of the screen's. */
function cardBlocks({ measure, system }: BookKit, sheet: DraftSheet, { inputs, card }: BackUp, across: number, k: number): Block[] {
  const { pump, draftSite } = sheet
  const { verdict, unsure } = verdictWords(sheet, card, system)
  const steps = stepWords(card, system)
  const giveUp = giveUpWords(sheet, card, system)
  // Without steps what is left to do has the whole width.
  const left = steps.length === 0 ? 0 : (across - GAP) * 0.56
  const right = steps.length === 0 ? across : (across - GAP) * 0.44
  return [
    ...paragraph(measure, across, say('draft.card.title'), { size: 14 * k, weight: 'bold' }, 0),
    ...paragraph(measure, across, `${say('draft.card.heading', { pump: pump.name, site: draftSite.name })} · ${say('draft.card.lift', { lift: liftText(sheet, system), level: sheet.lift.drop_ft === 0 ? 'usual' : 'lower' })}`, { size: 10.5 * k, weight: 'bold' }, 5),
    framed(across, [...paragraph(measure, insideFrame(across), verdict, { size: 12 * k, weight: 'bold' }, unsure === undefined ? 0 : 3), ...(unsure === undefined ? [] : paragraph(measure, insideFrame(across), unsure, { size: 9.5 * k }, 0))], { width: 2 }),
    ...(card.window.drainsTank ? list(measure, across, [{ text: say('draft.card.drains'), sign: '!', isStrong: true }]) : []),
    ...tiles(measure, across, windowWords(card, system), 4),
    sideBySide([
      ...(steps.length === 0 ? [] : [{ across: left, blocks: [heading(measure, left, say('draft.card.steps')), ...steps.map(({ act, until }, i) => stepBlock(measure, left, i + 1, act, until, k))] }]),
      { across: right, blocks: [
        heading(measure, right, say('draft.card.budget')), ...list(measure, right, budgetWords(sheet, inputs, card, system).map((text) => ({ text })), 8.6 * k),
        ...(giveUp === undefined ? [] : [space(4), framed(right, [...paragraph(measure, insideFrame(right), say('draft.card.give-up'), { size: 11.5 * k, weight: 'bold' }, 1), ...giveUp.flatMap((text) => paragraph(measure, insideFrame(right), text, { size: 8.8 * k }, 2))])]),
        space(3), ...list(measure, right, [{ text: say('caution.back-up-prime'), sign: '!', isStrong: true }], 9 * k),
      ] },
    ], GAP),
    heading(measure, across, say('draft.card.inputs')),
    sideBySide([0, 1].map((side) => ({ across: (across - GAP) / 2, blocks: inputTable(measure, (across - GAP) / 2, inputWords(inputs, system).filter((_, i, all) => (i < all.length / 2 ? 0 : 1) === side), k) })), GAP), space(3),
    ...paragraph(measure, across, [isAllMeasured(inputs) ? '' : say('draft.card.measure'), say('draft.card.foot')].filter((text) => text !== '').join(' '), { size: 7.8 * k }, 0),
  ]
}

function inputTable(measure: Measure, across: number, inputs: readonly InputWords[], k: number): Block[] {
  return table(measure, across, [{ head: say('book.card.number'), share: 3.5 }, { head: say('book.card.value'), share: 1.5, align: 'right' }, { head: say('book.card.range'), share: 1.9, align: 'right' }, { head: say('book.card.known'), share: 1.5 }], inputs.map(({ name, value, range, mark }) => [name, { text: value, isStrong: true }, range || say('book.fig.dash'), say(`evidence.${mark}`)]), 7.4 * k, 1.6 * k)
}

function stepBlock(measure: Measure, across: number, number: number, act: string, until: string | undefined, k: number): Block {
  const indent = 20
  const [big, small] = [9.6 * k, 8.6 * k]
  const acts = wrap(measure, act, across - indent, big, 'bold'), untils = until === undefined ? [] : wrap(measure, until, across - indent, small, 'regular')
  const down = acts.length * big * LEADING + untils.length * small * LEADING + 3.5
  return {
    down,
    draw: (page, x, y) => {
      page.line(String(number), x + 2, y + 1, { size: 12, weight: 'bold' })
      acts.forEach((line, i) => { page.line(line, x + indent, y + 1.5 + i * big * LEADING, { size: big, weight: 'bold' }) })
      untils.forEach((line, i) => { page.line(line, x + indent, y + 1.5 + acts.length * big * LEADING + i * small * LEADING, { size: small }) })
      page.rule(x, x + across, y + down, 0.5, 'hair')
    },
  }
}
