import { describe, expect, it } from 'vitest'
import { changedByOne, classicalLiftTable, drawdown, draftCapacity, everySize, highestLiftFor_ft, leftAfter_gal, suctionLossAt1000gpm_ft } from '@/lib/hydraulics'
import type { DraftingPump } from '@/lib/plan'
import { draftWith, explainDraw, explainLift, farFromWater, findDraftSheet, isWorking, type Working } from '@/lib/supply'
import { readCases } from '@/tests/reference/reference-case'
import { smallBundle } from '@/tests/fixtures/bundle'

const sheetOf = (changes: Readonly<Record<string, unknown>> = {}, trial = {}) => {
  const { district } = smallBundle(changes)
  return findDraftSheet(district, district.draftSites[0]!, district.apparatus[0] as DraftingPump, trial)!
}

describe('the sheet of a draft site', () => {
  it('measures lift before it works it out, and adds what the season takes', () => {
    const elevations = { 'district.draftSites.0.lift_ft': undefined, 'district.draftSites.0.bankElevation_ft': 740, 'district.sources.0.surfaceElevation_ft': 736 }
    expect(sheetOf().lift).toMatchObject({ lift_ft: 10, from: 'measured' })
    // 740 + 2.5 − 736, by hand.
    expect(sheetOf(elevations).lift).toMatchObject({ lift_ft: 6.5, from: 'elevations', isGuess: false })
    expect(sheetOf({ ...elevations, 'district.sources.0.seasonalDrop_ft': 2 }, { season: 'dry' }).lift).toMatchObject({ lift_ft: 8.5, drop_ft: 2 })
  })

  it('says an impossible lift, and by how many feet', () => {
    const { capacity } = sheetOf({ 'district.draftSites.0.lift_ft': 40 })
    expect(capacity).toMatchObject({ flow_gpm: 0, limitedBy: 'lift' })
    // The pump holds 25.3 ft at 1,000 ft and 60 °F.
    expect(capacity.overLift_ft).toBeCloseTo(40 - 25.3, 6)
  })

  it('says where the bank takes more hard suction than the pumper carries, as the plan does', () => {
    const bare = (run_ft: number, kind = 'pond') => sheetOf({
      'district.apparatus.0.suction_in': 5, 'district.apparatus.0.suction_ft': 20, 'district.draftSites.0.hoseRun_ft': run_ft, 'district.sources.0.kind': kind,
    }).issues.filter(({ code }) => code === 'suction-not-carried')
    expect(bare(30)).toMatchObject([{ severity: 'warn', subjectIds: ['p1', 'ds1'], values: { size_in: 5, carried_ft: 20, needed_ft: 30 } }])
    expect(bare(20)).toEqual([])
    // Its pipe reaches the water.
    expect(bare(30, 'dryHydrant')).toEqual([])
  })

  it('says where a bank stands farther from its water than suction reaches', () => {
    const { draftSites: [site], sources: [source] } = smallBundle({ 'district.draftSites.0.hoseRun_ft': 30 }).district
    expect(farFromWater(site!, source!, 230)).toBeUndefined()
    expect(farFromWater(site!, source!, 640)).toMatchObject({ code: 'draft-site-far', severity: 'warn', subjectIds: ['ds1', 'so1'], values: { away_ft: 640 } })
    expect(farFromWater({ ...site!, dryHydrant: { pipe_in: 6, pipe_ft: 500 } } as typeof site & object, source!, 640)).toBeUndefined()
  })

  it('is undefined for a pump without a rating', () => {
    const { district } = smallBundle({ 'district.apparatus.0.rated_gpm': undefined })
    expect(findDraftSheet(district, district.draftSites[0]!, district.apparatus[0] as DraftingPump)).toBeUndefined()
  })

  it('answers as a plan does through the set-up tried', () => {
    const sheet = sheetOf()
    const tried = { size_in: 5, length_ft: 30, lineCount: 1 }
    expect(draftWith(sheet, { suction: tried }).flow_gpm).toBe(draftCapacity({ pumper: sheet.pumper, suction: tried, place: sheet.place, ask: { netPressure_psi: 150 } }).flow_gpm)
  })

  it('gives less in warm water, thin air and low pressure', () => {
    const base = sheetOf({ 'district.draftSites.0.lift_ft': 16 }).capacity.flow_gpm
    for (const trial of [{ water_degF: 100 }, { altitude_ft: 6000 }, { barometer_inHg: 28.5 }])
      expect(sheetOf({ 'district.draftSites.0.lift_ft': 16 }, trial).capacity.flow_gpm).toBeLessThan(base)
  })
})

describe('the workings', () => {
  const leaves = (working: Working): number[] => working.inputs.flatMap(({ from, value }) => (isWorking(from) ? [from.value, ...leaves(from)] : [value]))

  it('end in the figures shown', () => {
    const sheet = sheetOf({ 'district.draftSites.0.lift_ft': 16 })
    expect(explainDraw(sheet).value).toBe(sheet.capacity.flow_gpm)
    expect(explainLift(sheet).value).toBe(16)
    expect(leaves(explainDraw(sheet))).toContain(16)
  })

  it('add up: head left is air less vapor less lift, and is all spent where suction limits', () => {
    const { capacity } = sheetOf({ 'district.draftSites.0.lift_ft': 16 })
    expect(capacity.limitedBy).toBe('suction')
    expect(capacity.availableHead_ft - capacity.suctionLoss_ft - capacity.requiredHead_ft).toBeCloseTo(0, 9)
  })
})

describe('set-ups beside each other', () => {
  const own = { size_in: 6, length_ft: 20, lineCount: 1 }

  it('differ from the own one in one thing each, and none stands twice', () => {
    const list = changedByOne(own)
    const keys = list.map(({ setup }) => JSON.stringify([setup.size_in, setup.length_ft, setup.lineCount, setup.strainer ?? 'barrel', setup.intake ?? 'side']))
    expect(list[0]).toEqual({ change: 'none', setup: own })
    expect(new Set(keys).size).toBe(keys.length)
    for (const { setup } of list.slice(1)) {
      const differences = [setup.size_in !== 6, setup.length_ft !== 20, setup.lineCount !== 1, (setup.strainer ?? 'barrel') !== 'barrel', (setup.intake ?? 'side') !== 'side']
      expect(differences.filter(Boolean)).toHaveLength(1)
    }
  })

  it('of a dry hydrant try another pipe and leave its strainer alone', () => {
    const list = changedByOne({ ...own, dryHydrant: { pipe_in: 6, length_ft: 46, elbow90Count: 1, elbow45Count: 2 } })
    expect(list.map(({ change }) => change)).not.toContain('strainer')
    const wider = list.find(({ change }) => change === 'pipe')
    expect(wider?.setup.dryHydrant?.pipe_in).toBe(8)
    expect(suctionLossAt1000gpm_ft(wider!.setup)).toBeLessThan(suctionLossAt1000gpm_ft(list[0]!.setup))
  })

  it('mark the own one among all sizes', () => {
    expect(everySize(own)).toHaveLength(8)
    expect(everySize(own).filter(({ change }) => change === 'none').map(({ setup }) => setup)).toEqual([own])
  })
})

describe('the classical table in the app', () => {
  it('has the cells of the reference cases, every one', () => {
    const cases = readCases('draft-lift.json').cases.filter(({ mark, law, unit }) => mark === 'memory' && law === 'suctionSide_gpm' && unit === 'gpm')
    const cells = classicalLiftTable.rows.flatMap(({ lift_ft, length_ft, flows_gpm }) =>
      classicalLiftTable.columns.map(({ rated_gpm, size_in }, index) => ({ lift_ft, length_ft, rated_gpm, size_in, flow_gpm: flows_gpm[index] ?? 0 })))
    expect(cells).toHaveLength(88)
    const key = (lift: unknown, rated: unknown, size: unknown) => `${String(lift)} ${String(rated)} ${String(size)}`
    const theirs = new Map(cases.map((one) => [key(one.given.lift_ft, one.given.rated_gpm, one.given.size_in), one.expected]))
    expect(cells.filter(({ lift_ft, rated_gpm, size_in, flow_gpm }) => theirs.get(key(lift_ft, rated_gpm, size_in)) !== flow_gpm)).toEqual([])
  })
})

describe('the highest lift for a flow', () => {
  it('is the lift at which just that flow is drawn', () => {
    const { pumper, place } = sheetOf()
    const suction = { size_in: 5, length_ft: 20, lineCount: 1 }
    const lift_ft = highestLiftFor_ft({ pumper, suction, place }, 800)
    expect(draftCapacity({ pumper, suction, place: { ...place, lift_ft }, ask: { netPressure_psi: 0 } }).suctionSide_gpm).toBeCloseTo(800, 6)
  })
})

describe('drawing a source down', () => {
  // Conservation-district page (seen): 30,000 gal is 250 gpm for two hours.
  it('takes two hours for 30,000 gal at 250 gpm', () => {
    expect(drawdown({ usable_gal: 30_000, inflow_gpm: 0, draw_gpm: 250 }).lasts_s).toBe(7200)
  })

  it('never ends where as much runs in', () => {
    expect(drawdown({ usable_gal: 30_000, inflow_gpm: 300, draw_gpm: 250, surface_sqft: 1000 })).toMatchObject({ net_gpm: -50, fallPerHour_ft: 0 })
    expect(drawdown({ usable_gal: 30_000, inflow_gpm: 300, draw_gpm: 250 }).lasts_s).toBeUndefined()
  })

  it('falls by a foot for each 325,851 gal of an acre', () => {
    expect(drawdown({ usable_gal: 325_851, inflow_gpm: 0, draw_gpm: 500, surface_sqft: 43_560 }).wholeFall_ft).toBeCloseTo(1, 5)
  })

  it('leaves nothing at its end and never less', () => {
    const ask = { usable_gal: 30_000, inflow_gpm: 0, draw_gpm: 250 }
    expect(leftAfter_gal(ask, 3600)).toBe(15_000)
    expect(leftAfter_gal(ask, 7200)).toBe(0)
    expect(leftAfter_gal(ask, 10_000)).toBe(0)
  })
})
