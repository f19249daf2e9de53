import { describe, expect, test } from 'vitest'
import { buildRoadGraph } from '@/lib/roads'
import { extractOf, placeIn, wayIn, type Town, type TownRestriction } from './town'

/** A cross at E, arms to B, D, F, H, and a way around by C. */
const cross = (restrictions: TownRestriction[]): Town => ({
  grid: `
    ABC
    DEF
    GHI`,
  ways: [
    { id: 1, through: 'DE', tags: { highway: 'tertiary' } },
    { id: 2, through: 'EF', tags: { highway: 'tertiary' } },
    { id: 3, through: 'EB', tags: { highway: 'tertiary' } },
    { id: 4, through: 'EH', tags: { highway: 'tertiary' } },
    { id: 5, through: 'FC', tags: { highway: 'tertiary' } },
    { id: 6, through: 'CB', tags: { highway: 'tertiary' } },
  ],
  restrictions,
})
const noLeft: TownRestriction = { from: 1, via: 'E', to: 3, kind: 'no_left_turn' }

describe('turn restrictions over a node', () => {
  test('without one the turn is taken', async () => {
    expect(await wayIn(cross([]), 'D', 'B')).toBe('DEB')
  })
  test('a forbidden turn is driven around, never by turning round in the road', async () => {
    expect(await wayIn(cross([noLeft]), 'D', 'B')).toBe('DEFCB')
  })
  test('it binds only those who come from the road it names', async () => {
    expect(await wayIn(cross([noLeft]), 'H', 'B')).toBe('HEB')
    expect(await wayIn(cross([noLeft]), 'B', 'D')).toBe('BED')
  })
  test('where the road ends a route may turn round', async () => {
    const town = { ...cross([noLeft]), ways: cross([]).ways.filter(({ id }) => id < 5) }
    // H is nearer than F by one of longitude's shorter degrees: the way round is by F or H, and back over E.
    expect(await wayIn(town, 'D', 'B')).toMatch(/^DE[FH]EB$/)
  })
  test('an only-turn forbids all others', async () => {
    const only = cross([{ from: 1, via: 'E', to: 2, kind: 'only_straight_on' }])
    expect(await wayIn(only, 'D', 'F')).toBe('DEF')
    expect(await wayIn(only, 'D', 'B')).toBe('DEFCB')
    expect(await wayIn(only, 'H', 'B')).toBe('HEB')
  })
  test.each([[{ except: 'bus;emergency' }]])('one that excepts emergency vehicles does not bind: %j', async (extra) => {
    expect(await wayIn(cross([{ ...noLeft, extra }]), 'D', 'B')).toBe('DEB')
  })
  test('those that cannot be used are counted by reason', async () => {
    const town = cross([noLeft, { ...noLeft, extra: { except: 'emergency' } }, { from: 77, via: 'E', to: 3, kind: 'no_left_turn' }, { from: 1, via: 'E', to: 3, kind: 'maybe' }])
    const { issues } = buildRoadGraph(await extractOf(town))
    expect(issues).toEqual([
      { code: 'roads-restrictions-unused', severity: 'note', subjectIds: [], values: { usedCount: 1, exempt: 1, incomplete: 1, 'unknown-kind': 1 } },
    ])
  })
})

describe('turn restrictions over whole roads', () => {
  /** From D over E–F into C is forbidden; from H over E–F it is not. */
  const over = (kind: string): Town => cross([{ from: 1, via: 2, to: 5, kind }])
  test('only the whole run is forbidden', async () => {
    expect(await wayIn(over('no_u_turn'), 'D', 'F')).toBe('DEF')
    expect(await wayIn(over('no_u_turn'), 'H', 'C')).toBe(await wayIn(cross([]), 'H', 'C'))
    expect(await wayIn(over('no_u_turn'), 'D', 'C')).toBe('DEBC')
  })
  test('two that begin alike both hold', async () => {
    const town: Town = {
      ...cross([{ from: 1, via: 2, to: 5, kind: 'no_left_turn' }, { from: 1, via: 2, to: 7, kind: 'no_right_turn' }]),
      ways: [...cross([]).ways.filter(({ id }) => id !== 6), { id: 7, through: 'FI', tags: { highway: 'tertiary' } }],
    }
    expect(await wayIn(town, 'D', 'F')).toBe('DEF')
    expect(await wayIn(town, 'H', 'C')).toBe('HEFC')
    expect(await wayIn(town, 'H', 'I')).toBe('HEFI')
    // E's dead ends B and H are where a way from D can turn round; then it comes to F from another road.
    expect(await wayIn(town, 'D', 'C')).toMatch(/^DE[BH]EFC$/)
    expect(await wayIn(town, 'D', 'I')).toMatch(/^DE[BH]EFI$/)
  })
  test('one inside another holds for both ways in', async () => {
    const town: Town = {
      grid: `
        ABCDE
        ....F`,
      ways: [
        { id: 1, through: 'AB', tags: { highway: 'tertiary' } }, { id: 2, through: 'BC', tags: { highway: 'tertiary' } },
        { id: 3, through: 'CD', tags: { highway: 'tertiary' } }, { id: 4, through: 'DE', tags: { highway: 'tertiary' } },
        { id: 5, through: 'DF', tags: { highway: 'tertiary' } },
      ],
      restrictions: [{ from: 1, via: [2, 3], to: 4, kind: 'no_straight_on' }, { from: 2, via: 3, to: 5, kind: 'no_right_turn' }],
    }
    expect(await wayIn(town, 'A', 'D')).toBe('ABCD')
    // From A both arms beyond D are shut, and no dead end lies on the way: E and F are out of reach.
    expect(await wayIn(town, 'A', 'E')).not.toBe('ABCDE')
    expect(await wayIn(town, 'A', 'F')).not.toBe('ABCDF')
    expect(await wayIn(town, 'BC', 'E')).toBe('*CDE')
    expect(await wayIn(town, 'BC', 'F')).not.toBe('*CDF')
  })
})

describe('points on the way', () => {
  test('are passed in their order', async () => {
    const town = cross([])
    expect(['DEFCBEH', 'DEBCFEH']).toContain(await wayIn(town, 'D', 'H', { via: [placeIn(town, 'EF')] }))
    expect(await wayIn(town, 'D', 'B', { via: [placeIn(town, 'FC')] })).toBe('DEFCB')
  })
  test('past one the route goes on as it came: it does not turn round in the road', async () => {
    const town: Town = { grid: `ABC\n...\nD.F`, ways: [{ id: 1, through: 'ABC', tags: { highway: 'tertiary' } }, { id: 2, through: 'ADFC', tags: { highway: 'tertiary' } }] }
    expect(await wayIn(town, 'A', 'A', { via: [placeIn(town, 'BC')] })).toMatch(/^(ABCFDA|ADFCBA)$/)
  })
  test('at the end of a road it turns round', async () => {
    const town: Town = { grid: 'ABC', ways: [{ id: 1, through: 'ABC', tags: { highway: 'tertiary' } }] }
    expect(await wayIn(town, 'A', 'AB', { via: [placeIn(town, 'BC')] })).toBe('ABCB*')
  })
  test('a restriction that begins before the point holds after it', async () => {
    const town = cross([{ from: 1, via: 2, to: 5, kind: 'no_left_turn' }])
    expect(await wayIn(town, 'D', 'C', { via: [placeIn(town, 'EF')] })).not.toBe('DEFC')
  })
})
