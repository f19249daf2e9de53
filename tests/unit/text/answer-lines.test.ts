import { describe, expect, it } from 'vitest'
import { answerLines, issueLabel, issueLook } from '@/app/_text'
import { stopText } from '@/app/_advice/change-text'
import { flowDoubt, prepareDoubt } from '@/lib/doubt'
import { issue, type Issue } from '@/lib/issue'
import { compilePlan, countUnmeasured, evaluatePlan, type SupplyResult } from '@/lib/supply'
import { smallBundle } from '@/tests/fixtures/bundle'

const itemNames: Readonly<Record<string, string>> = { du1: 'Dump site 1', f1: 'Fill site 1', t1: 'Tender 1', t2: 'Tender 2', p1: 'Engine 1' }
const names = (id: string) => itemNames[id]
const linesOf = (result: SupplyResult) => answerLines(result, names, 'us').map(({ look, text }) => `${look}: ${text.replaceAll('\u00a0', ' ')}`)
const answered = evaluatePlan(smallBundle(), { quick: true })
/** The small plan's answer with other figures in it. */
const withFigures = (figures: Partial<SupplyResult>): SupplyResult => ({ ...answered, issues: [], ...figures })
const nights = (flow_gpm: number) => ({ flow_gpm, share: 0.9, shareError: 0.015, low_gpm: flow_gpm, high_gpm: flow_gpm, nightCount: 400, seed: 1 })

describe('the headline', () => {
  it('says that nothing is tested for doubt until it is', () => {
    const [line] = linesOf(withFigures({ sustainable_gpm: 520, needed_gpm: 500, supplyReady_s: 30 * 60, gap_s: 0 }))
    expect(line).toMatch(/^plain: Not yet tested for doubt: expected 520 gpm, needed 500 gpm\. First water \d+ min after dispatch, supply ready 30 min, no gap before it\./)
  })

  it('leads with the dependable flow once it is known', () => {
    const [line] = linesOf(withFigures({ sustainable_gpm: 640, needed_gpm: 500, dependable: nights(523), gap_s: 0 }))
    expect(line).toMatch(/^plain: Dependable 520 gpm, expected 640 gpm: the needed 500 gpm is met\./)
    expect(line).not.toContain('tested')
  })

  it('says by how much it is short, in danger: by the dependable flow where that is known', () => {
    expect(linesOf(withFigures({ sustainable_gpm: 292, needed_gpm: 750, gap_s: 0 }))[0]).toMatch(/^danger: Short by 460 gpm of the 750 gpm needed/)
    expect(linesOf(withFigures({ sustainable_gpm: 292, needed_gpm: 750, dependable: nights(270), gap_s: 0 }))[0]).toMatch(/^danger: Short by 480 gpm of the 750 gpm needed/)
    // Met as expected, and not to be depended on.
    expect(linesOf(withFigures({ sustainable_gpm: 510, needed_gpm: 500, dependable: nights(480), gap_s: 0 }))[0]).toMatch(/^danger: Short by 20 gpm/)
  })

  it('puts no water at all before everything, as danger', () => {
    const [first, second] = linesOf(withFigures({ sustainable_gpm: 292, needed_gpm: 750, gap_s: 459, tankEmpty_s: 483, supplyReady_s: 942 }))
    expect(first).toBe('danger: No water for 8 min, the gap before supply: the first engine’s tank is empty at 8 min, supply is ready at 16 min.')
    expect(second).toMatch(/^danger: Short by/)
  })

  it('says of a supply that is ready and never enough that it is so', () => {
    const last = (figures: Partial<SupplyResult>) => linesOf(withFigures({ gap_s: 0, supplyReady_s: 942, needed_gpm: 750, ...figures })).at(-1)
    expect(last({ sustainable_gpm: 185 })).toContain('supply ready 16 min. It never brings the 750 gpm needed.')
    expect(last({ sustainable_gpm: 760 })).toContain('supply ready 16 min, no gap before it.')
    expect(last({ sustainable_gpm: 760 })).not.toContain('never')
    expect(last({ sustainable_gpm: 185, laterFlows: [{ from_s: 3000, flow_gpm: 760, layIds: [] }] })).not.toContain('never')
  })

  it('promises no gap and no first water where no engine is named first due, and says so', () => {
    const lines = linesOf(evaluatePlan(smallBundle({ 'plan.firstDueId': undefined }), { quick: true }))
    expect(lines).toContain('amber: No first-due engine is named: when water is first on the fire, when that engine’s tank is empty and the gap before supply are not known. Name it.')
    expect(lines.at(-1)).toMatch(/ Supply ready \d+ min after dispatch\./)
    expect(lines.join()).not.toContain('no gap')
  })

  it('says when nothing can be sustained', () => {
    expect(linesOf(withFigures({ sustainable_gpm: 0, needed_gpm: 500, gap_s: 0 }))[0]).toBe('danger: No flow can be sustained; 500 gpm is needed.')
  })

  it('says which pumper is counted on that nobody named', () => {
    expect(linesOf(evaluatePlan(smallBundle({ 'plan.dumpSites.0.pumperId': undefined }), { quick: true })))
      .toContain('amber: No pumper is named at Dump site 1: a 1,000 gpm pumper is assumed there.')
    expect(linesOf(evaluatePlan(smallBundle({ 'plan.fillSites.0.pumperId': undefined, 'plan.fillSites.0.rate_gpm': 605 }), { quick: true })))
      .toContain('amber: No pumper is named at Fill site 1: the 605 gpm entered there is counted from its set-up on, whoever pumps it.')
  })

  it('says which portable tank is counted on that nobody named', () => {
    expect(linesOf(evaluatePlan(smallBundle({ 'plan.dumpSites.0.portableTankIds': [] }), { quick: true })).find((line) => line.includes('portable tank')))
      .toMatch(/^amber: No portable tank is named at Dump site 1: one of [\d,]+ gal is assumed to come with the first tender\.$/)
  })

  it('says whose water nobody has measured, since the whole flow counts on it', () => {
    const [line] = linesOf(evaluatePlan(smallBundle({ 'district.sources.0.usable_gal': undefined, 'district.sources.0.surface_sqft': undefined, 'district.sources.0.usableDepth_ft': undefined, 'district.sources.0.kind': 'pond' }), { quick: true })).filter((one) => one.includes('never running out'))
    expect(line).toMatch(/^amber: /)
    expect(linesOf(evaluatePlan(smallBundle({ 'district.sources.0.usable_gal': 90_000 }), { quick: true })).join()).not.toContain('never running out')
  })

  it('says first what does not come, then what nobody named, then what a pump may not do; a note is not said', () => {
    const issues = [issue('rated-hose-assumed', 'warn', ['fi1', 'p1'], { least_gpm: 700, size_in: 5 }), issue('dump-pumper-assumed', 'warn', ['du1'], { rated_gpm: 1000 }), issue('lay-pumper-elsewhere', 'warn', ['la1', 'du1'])]
    const places = (list: Issue[]) => linesOf(withFigures({ sustainable_gpm: 760, needed_gpm: 750, gap_s: 0, issues: list })).flatMap((line) => ['if it was rated through', 'No pumper is named', 'cannot do both'].filter((words) => line.includes(words)))
    expect(places(issues)).toEqual(['cannot do both', 'No pumper is named', 'if it was rated through'])
    expect(places(issues.map((one) => ({ ...one, severity: 'note' })))).toEqual([])
  })

  it('counts the inputs nobody has measured as the result lists them, and says how many are mere assumptions', () => {
    const assumedCount = answered.unmeasured.filter(({ mark }) => mark === 'assumed').length
    expect(countUnmeasured(answered)).toEqual({ all: answered.unmeasured.length, assumed: assumedCount })
    expect(linesOf(answered).at(-1)).toContain(`${answered.unmeasured.length} inputs are not measured, ${assumedCount} of them mere assumptions.`)
    expect(linesOf({ ...answered, unmeasured: [] }).at(-1)).toContain('Every input is measured.')
  })

  it('takes a form that is not finished as something to do, and an impossible plan as danger', () => {
    const untanked = evaluatePlan(smallBundle({ 'plan.dumpSites.0.portableTankIds': [], 'plan.dumpSites.0.tankCapacity_gal': 0 }))
    expect(linesOf(untanked)).toEqual(['amber: No answer yet. No portable tank (or nurse tender) at Dump site 1: nothing to draft from. Choose one, or enter its capacity.'])
    expect(linesOf(evaluatePlan(smallBundle({ 'district.draftSites.0.lift_ft': 33 })))[0]).toMatch(/^danger: No answer yet\. /)
  })
})

describe('what there is to look at', () => {
  it('calls water that is not there by its name, and a form by its own', () => {
    const { issues } = evaluatePlan(smallBundle({ 'district.hazards.0.needed_gpm': 900 }))
    expect(issues.map((one) => [one.code, issueLook(one), issueLabel(one)])).toContainEqual(['short-of-need', 'loss', 'Short of water'])
    const blocked = evaluatePlan(smallBundle({ 'plan.tenders': [] })).issues[0]
    expect(blocked && [issueLook(blocked), issueLabel(blocked)]).toEqual(['unfinished', 'To enter'])
  })

  it('does not say that a site stands at itself where no pumper is named', () => {
    const stop = (subjectIds: string[]) => stopText({ kind: 'dumpPumper', subjectIds, values: {} }, names)
    expect(stop(['du1', 'du1'])).toBe('The pumper assumed at Dump site 1 (none is named)')
    expect(stop(['p1', 'du1'])).toBe('Engine 1 at Dump site 1')
  })
})

it('names the same number to measure first as the ranking of the nights', () => {
  const model = prepareDoubt(compilePlan(smallBundle()))
  if (!model) throw new Error('the plan must have an answer')
  const { firstToMeasure } = flowDoubt(model)
  expect(firstToMeasure?.share).toBeGreaterThan(0.01)
  expect(model.inputs.some(({ field, itemIds }) => field === firstToMeasure?.field && itemIds.join() === firstToMeasure.itemIds.join())).toBe(true)
  // Nothing is ranked before the nights: there is one ranking, and no other stands in for it.
  expect(evaluatePlan(smallBundle()).firstToMeasure).toBeNull()
})
