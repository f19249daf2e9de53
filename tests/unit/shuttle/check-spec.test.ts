import { describe, expect, test } from 'vitest'
import { checkSpec, compileShuttle, runShuttle, type ShuttleSpec } from '@/lib/shuttle'
import { dumpSite, fillSite, layout, tender } from './layout'

const codes = (spec: ShuttleSpec) => checkSpec(spec).map(({ code }) => code)

describe('a spec', () => {
  test('in order has no issues', () => {
    expect(checkSpec(layout())).toEqual([])
  })

  const broken: [string, ShuttleSpec, string][] = [
    ['a tender without water', layout({ tenders: [tender({ usable_gal: 0 })] }), 'tenders[0].usable_gal'],
    ['a tender sent to no dump site', layout({ tenders: [tender({ dumpIndex: 1 })] }), 'tenders[0].dumpIndex'],
    ['a rate too few for the bays', layout({ fills: [fillSite({ bayCount: 2 })] }), 'fills[0].bayRate_gpm'],
    ['a pumper set before its tank', layout({ dumps: [dumpSite({ ready_s: 10 })] }), 'dumps[0].pumpReady_s'],
    ['shares that leave demand to nobody', layout({ dumps: [dumpSite({ demandShare: 0.9 })] }), 'dumps.demandShare'],
    ['a time that is no number', layout({ tenders: [tender({ toFill_s: NaN })] }), 'tenders[0].toFill_s'],
    ['two tenders with one id', layout({ tenders: [tender(), tender()] }), 'id'],
    ['stages out of order', layout({ demand: { stages: [{ from_s: 5, flow_gpm: 1 }, { from_s: 5, flow_gpm: 2 }], reserve_s: 1 } }), 'demand.stages[1].from_s'],
    ['a spread upside down', layout({ tenders: [tender({ spread: { dump: { trip: { lowFactor: 2, modeFactor: 1, highFactor: 1 } } } })] }), 'tenders[0].spread.dump.trip'],
    ['no dump site', layout({ dumps: [], tenders: [] }), 'dumps.demandShare'],
  ]

  test.each(broken)('with %s blocks, and compiling throws its path', (_, spec, path) => {
    expect(checkSpec(spec)[0]).toMatchObject({ code: 'spec-out-of-range', severity: 'block', values: { path } })
    expect(() => compileShuttle(spec)).toThrow(RangeError)
    expect(() => compileShuttle(spec)).toThrow(path)
  })

  test('says what will go wrong before it is run', () => {
    expect(codes(layout({ tenders: [] }))).toEqual(['no-tender-comes', 'dump-without-tender'])
    expect(codes(layout({ demand: { stages: [], reserve_s: 1 } }))).toEqual(['no-demand'])
    expect(codes(layout({ dumps: [dumpSite({ capacity_gal: 150 })] }))).toEqual(['tank-below-draft-limit', 'tank-smaller-than-load'])
    expect(codes(layout({ dumps: [dumpSite({ capacity_gal: 750 })] }))).toEqual(['tank-below-reserve', 'tank-smaller-than-load'])
    expect(codes(layout({ tenders: [tender({ withdraw_s: 50 })] }))).toEqual(['withdrawn-before-arrival'])
  })
})

describe('a run', () => {
  test('refuses a negative flow and a length that is not above 0', () => {
    const scenario = compileShuttle(layout())
    expect(() => runShuttle(scenario, { demand: -1 })).toThrow(RangeError)
    expect(() => runShuttle(scenario, { afterReady_s: 0 })).toThrow(RangeError)
  })
})
