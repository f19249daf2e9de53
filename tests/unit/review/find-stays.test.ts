import { describe, expect, test } from 'vitest'
import { asPlanned, told, tripsOf } from './support'

const without = (...marks: string[]) => asPlanned.split('\n').filter((line) => !marks.some((mark) => line.includes(mark))).join('\n')
const dumps = (lines: string) => tripsOf(lines).loads.map(({ from_s, upTo_s }) => [Math.round(from_s), Math.round(upTo_s)])

describe('trips found from events', () => {
  test('a whole log needs no assumption', () => {
    const { loads, assumptions } = tripsOf(asPlanned)
    expect(loads.map(({ from_s, upTo_s, kept_gal }) => [from_s, upTo_s, kept_gal])).toEqual([[130, 190, 1000], [970, 1030, 1000]])
    expect(assumptions).toEqual([])
  })

  test('a missing mark takes its usual time before the one that follows, and says so', () => {
    const { loads, assumptions } = tripsOf(without('dump empty 1030'))
    expect(loads[1]).toMatchObject({ from_s: 970, upTo_s: 1030 })
    expect(told(assumptions)).toEqual(['missing dump empty 1030 between'])
  })

  test('a stay that nobody logged was there all the same', () => {
    const { loads, assumptions } = tripsOf(asPlanned.split('\n').filter((line) => !line.includes('fill')).join('\n'))
    expect(loads).toHaveLength(2)
    expect(told(assumptions)).toEqual(['missing-stay fill 520 between'])
  })

  test('a mark that nobody ever logged is told once', () => {
    const { assumptions } = tripsOf(without('empty'))
    expect(told(assumptions)).toEqual(['never-logged dump empty'])
  })

  test('what is logged twice counts once, the first time', () => {
    const { assumptions } = tripsOf(`${asPlanned}\n  dump dumping 975`)
    expect(told(assumptions)).toEqual(['doubled dump dumping 975'])
    expect(dumps(`${asPlanned}\n  dump dumping 975`)).toEqual([[130, 190], [970, 1030]])
  })

  test('what is logged in an order that cannot be is taken in the order of a stay', () => {
    const swapped = asPlanned.replace('dump dumping 970', 'dump dumping 1032')
    expect(told(tripsOf(swapped).assumptions)).toEqual(['out-of-order dump dumping 1032'])
    expect(dumps(swapped)[1]).toEqual([1030, 1032])
  })

  test('a fill clock that runs ahead does not undo a dump', () => {
    const shifted = asPlanned.replace(/fill (\w+) (\d+)/g, (_, mark: string, at: string) => `fill ${mark} ${Number(at) + 310}`)
    const { loads, assumptions } = tripsOf(shifted)
    expect(loads.map(({ from_s, upTo_s }) => [from_s, upTo_s])).toEqual([[130, 190], [970, 1030]])
    expect(assumptions.length).toBeGreaterThan(0)
  })

  test('a button pressed for the wrong tender is left out', () => {
    const { loads, assumptions } = tripsOf(`${asPlanned}\n  fill arrived 105`)
    expect(loads).toHaveLength(2)
    expect(told(assumptions)).toContain('contradicts fill arrived 105')
  })

  test('a tender that stood there when the log ended has not dumped', () => {
    expect(tripsOf(without('dump dumping 970', 'dump empty 1030', 'dump left 1060')).loads).toHaveLength(1)
  })

  test('an empty log and one of a single event give no trip and no error', () => {
    expect(tripsOf('', undefined, 0)).toMatchObject({ loads: [], assumptions: [] })
    expect(tripsOf('fill arrived 30').loads).toEqual([])
    expect(tripsOf('dump empty 30', undefined, 30).loads).toHaveLength(1)
  })
})
