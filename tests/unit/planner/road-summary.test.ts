import { describe, expect, test } from 'vitest'
import { roadSummary } from '@/app/_plan/road-summary'
import type { LegResult } from '@/lib/supply'

const leg = (load: 'full' | 'empty', distance_mi: number | null, travel_s: number | null): LegResult => ({
  apparatusId: 't1', load, fromId: load === 'full' ? 'f1' : 'du1', toId: load === 'full' ? 'du1' : 'f1', by: 'routed', distance_mi, travel_s, isStraight: false, key: load,
})
const summary = (...legs: LegResult[]) => roadSummary({ legs }, ['f1'], 'us')?.replaceAll('\u00a0', ' ')

describe('the road between the sites in a line', () => {
  test('says out and back where they differ', () => {
    expect(summary(leg('empty', 1.3, 180), leg('full', 4, 540))).toBe('Out empty 1.3 mi, 3 min; back loaded 4 mi, 9 min')
  })

  test('says it once where they do not', () => {
    expect(summary(leg('empty', 1.1, 152), leg('full', 1.1, 152))).toBe('1.1 mi, 2 min 32 s each way')
  })

  test('says nothing where no way is found', () => {
    expect(summary()).toBeUndefined()
    expect(summary(leg('full', null, null))).toBeUndefined()
  })
})
