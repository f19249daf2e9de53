import { describe, expect, test } from 'vitest'
import { isRoute } from '@/lib/roads'
import { empty, loaded, routeIn, wayIn, type Town } from './town'

/** A block: the straight way A–B–C, and a longer one around it by D and F. */
const block = (short: Record<string, string>, more: Partial<Town> = {}): Town => ({
  grid: `
    ABC
    ...
    ...
    D.F`,
  ways: [
    { id: 1, through: 'ABC', tags: { highway: 'tertiary', name: 'Straight Road', ...short } },
    { id: 2, through: 'ADFC', tags: { highway: 'tertiary', name: 'Long Road' } },
  ],
  ...more,
})
const bridge = (tags: Record<string, string>): Town => ({
  ...block({}),
  ways: [
    { id: 1, through: 'AB', tags: { highway: 'tertiary', name: 'Straight Road' } },
    { id: 3, through: 'BC', tags: { highway: 'tertiary', name: 'Mill Bridge', bridge: 'yes', ...tags } },
    { id: 2, through: 'ADFC', tags: { highway: 'tertiary', name: 'Long Road' } },
  ],
})

describe('direction', () => {
  test('a two-way road is driven both ways', async () => {
    expect(await wayIn(block({}), 'A', 'C')).toBe('ABC')
    expect(await wayIn(block({}), 'C', 'A')).toBe('CBA')
  })
  test.each([['yes', 'ABC', 'CFDA'], ['1', 'ABC', 'CFDA'], ['-1', 'ADFC', 'CBA'], ['no', 'ABC', 'CBA'], ['reversible', 'ADFC', 'CFDA']])(
    'oneway=%s is kept', async (oneway, there, back) => {
      expect(await wayIn(block({ oneway }), 'A', 'C')).toBe(there)
      expect(await wayIn(block({ oneway }), 'C', 'A')).toBe(back)
    },
  )
  test.each([[{ junction: 'roundabout' }], [{ highway: 'motorway' }]])('%j is one-way though nothing says so', async (tags) => {
    expect(await wayIn(block(tags), 'C', 'A')).toBe('CFDA')
  })
  test('a motorway tagged two-way is two-way', async () => {
    expect(await wayIn(block({ highway: 'motorway', oneway: 'no' }), 'C', 'A')).toBe('CBA')
  })
  test('from the middle of a one-way road one goes on, and comes to it, its way', async () => {
    expect(await wayIn(block({ oneway: 'yes' }), 'BC', 'AB')).toBe('*CFDA*')
    expect(await wayIn(block({ oneway: 'yes' }), 'AB', 'BC')).toBe('*B*')
  })
})

describe('limits: the loaded and the empty tender are two vehicles', () => {
  test('a posted bridge stops the loaded tender and lets the empty one back', async () => {
    const town = bridge({ maxweight: '15' })
    expect(await wayIn(town, 'A', 'C', { vehicle: loaded })).toBe('ADFC')
    expect(await wayIn(town, 'C', 'A', { vehicle: empty })).toBe('CBA')
  })
  test('a vehicle of just the posted weight crosses, one pound more does not', async () => {
    const limit_lb = 15_000 / 0.45359237
    expect(await wayIn(bridge({ maxweight: '15' }), 'A', 'C', { vehicle: { ...loaded, gross_lb: limit_lb } })).toBe('ABC')
    expect(await wayIn(bridge({ maxweight: '15' }), 'A', 'C', { vehicle: { ...loaded, gross_lb: limit_lb + 1 } })).toBe('ADFC')
  })
  test('of several postings the lowest rules', async () => {
    expect(await wayIn(bridge({ maxweight: '30', 'maxweight:hgv': '12' }), 'A', 'C')).toBe('ADFC')
  })
  test.each([[{ maxheight: '3.0' }], [{ maxheight: "10'" }], [{ maxwidth: '2.3' }], [{ width: '2' }]])('%j stops a tender 10.5 ft high and 8.2 ft wide', async (tags) => {
    expect(await wayIn(block(tags), 'A', 'C')).toBe('ADFC')
  })
  test('a posting that says none, default or nonsense stops nobody', async () => {
    for (const maxweight of ['none', 'default', 'see sign']) expect(await wayIn(bridge({ maxweight }), 'A', 'C')).toBe('ABC')
  })
  test('a bridge without a known limit is crossed with a caution, one with a posting or with none posted is not cautioned', async () => {
    const codes = async (tags: Record<string, string>): Promise<string[]> => {
      const found = await routeIn(bridge(tags), 'A', 'C', { vehicle: empty })
      return isRoute(found) ? found.cautions.map(({ code }) => code) : [found.code]
    }
    expect(await codes({})).toEqual(['route-bridge-unknown'])
    expect(await codes({ maxweight: 'default' })).toEqual(['route-bridge-unknown'])
    expect(await codes({ maxweight: 'none' })).toEqual([])
    expect(await codes({ maxweight: '40' })).toEqual([])
    expect(await codes({ maxweight: '11' })).toEqual(['route-weight-close'])
    expect(await codes({ maxaxleload: '8' })).toEqual(['route-bridge-unknown', 'route-weight-otherwise'])
  })
  test('the limits kept are listed with the vehicle beside them', async () => {
    const found = await routeIn(bridge({ maxweight: '30', maxheight: '4' }), 'A', 'C')
    expect(isRoute(found) && found.limits.map(({ kind, limit, vehicle, name }) => [kind, Math.round(limit), vehicle, name])).toEqual([
      ['weight', 66139, 46_000, 'Mill Bridge'], ['height', 13, 10.5, 'Mill Bridge'],
    ])
  })
  test('an unknown vehicle is taken at the largest ordinary size, and the route says so', async () => {
    expect(await wayIn(bridge({ maxweight: '30' }), 'A', 'C', { vehicle: {} })).toBe('ADFC')
    const found = await routeIn(bridge({ maxweight: '40' }), 'A', 'C', { vehicle: {} })
    expect(isRoute(found) && found.cautions.map(({ code }) => code)).toContain('route-vehicle-assumed')
  })
})

describe('access', () => {
  test.each([[{ access: 'no' }], [{ motor_vehicle: 'no' }], [{ vehicle: 'no' }], [{ access: 'yes', motor_vehicle: 'no' }], [{ emergency: 'no' }], [{ ford: 'yes' }], [{ smoothness: 'impassable' }]])(
    '%j is never driven', async (tags) => {
      expect(await wayIn(block(tags), 'A', 'C')).toBe('ADFC')
    },
  )
  test.each([[{ access: 'no', emergency: 'yes' }], [{ motor_vehicle: 'no', emergency: 'designated' }], [{ access: 'no', motor_vehicle: 'yes' }], [{ access: 'permissive' }], [{ hgv: 'no' }]])(
    '%j is open to an apparatus', async (tags) => {
      expect(await wayIn(block(tags), 'A', 'C')).toBe('ABC')
    },
  )
  test('a private road is driven slowly, with a caution', async () => {
    const found = await routeIn(block({ access: 'private', highway: 'unclassified' }), 'A', 'B')
    expect(isRoute(found) && found.cautions.map(({ code }) => code)).toEqual(['route-limited-access'])
    expect(isRoute(found) && (found.distance_mi / found.drive_s) * 3600).toBeCloseTo(15, 6)
  })
  test('a footpath is no road unless it is opened to vehicles', async () => {
    expect(await wayIn(block({ highway: 'footway' }), 'A', 'C')).toBe('ADFC')
    expect(await wayIn(block({ highway: 'construction' }), 'A', 'C')).toBe('ADFC')
    const lane: Town = { grid: 'ABC', ways: [{ id: 1, through: 'AB', tags: { highway: 'service' } }, { id: 2, through: 'BC', tags: { highway: 'path', emergency: 'yes' } }] }
    expect(await wayIn(lane, 'A', 'C')).toBe('ABC')
  })
})

describe('barriers', () => {
  const at = (tags: Record<string, string>): Town => block({}, { nodeTags: { B: tags } })
  test.each([[{ barrier: 'bollard' }], [{ barrier: 'block' }], [{ barrier: 'gate', access: 'no' }], [{ barrier: 'something_new' }], [{ ford: 'yes' }], [{ barrier: 'height_restrictor', maxheight: '2.1' }]])(
    '%j in the road is not driven through', async (tags) => {
      expect(await wayIn(at(tags), 'A', 'C')).toBe('ADFC')
    },
  )
  test.each([[{ barrier: 'cattle_grid' }], [{ barrier: 'bollard', emergency: 'yes' }], [{ barrier: 'gate' }], [{ barrier: 'lift_gate', access: 'private' }]])(
    '%j in the road is', async (tags) => {
      expect(await wayIn(at(tags), 'A', 'C')).toBe('ABC')
    },
  )
  test('a gate costs half a minute and is cautioned; the road up to a bollard stays in use', async () => {
    const found = await routeIn(at({ barrier: 'gate', locked: 'yes' }), 'A', 'C')
    expect(isRoute(found) && [found.wait_s, found.cautions.map(({ code }) => code)]).toEqual([30, ['route-gates']])
    expect(await wayIn(at({ barrier: 'bollard' }), 'A', 'AB')).toBe('A*')
    expect(await wayIn(at({ barrier: 'bollard' }), 'AB', 'BC')).toBe('*ADFC*')
  })
  test('a signal or a stop is waited at once, in its own direction', async () => {
    const wait = async (tags: Record<string, string>, from: string, to: string): Promise<number | string> => {
      const found = await routeIn(at(tags), from, to)
      return isRoute(found) ? found.wait_s : found.code
    }
    expect(await wait({ highway: 'traffic_signals' }, 'A', 'C')).toBe(15)
    expect(await wait({ highway: 'stop', direction: 'forward' }, 'A', 'C')).toBe(12)
    expect(await wait({ highway: 'stop', direction: 'forward' }, 'C', 'A')).toBe(0)
  })
})

describe('speed is the slowest of class, posting, ground and width', () => {
  const speed = async (tags: Record<string, string>, from = 'A', to = 'B'): Promise<number> => {
    const found = await routeIn({ grid: 'AB', ways: [{ id: 1, through: 'AB', tags }] }, from, to)
    return isRoute(found) ? (found.distance_mi / found.drive_s) * 3600 : NaN
  }
  test.each<[Record<string, string>, number]>([
    [{ highway: 'tertiary' }, 35],
    [{ highway: 'tertiary', maxspeed: '20 mph' }, 20],
    [{ highway: 'tertiary', maxspeed: '100' }, 35],
    [{ highway: 'tertiary', maxspeed: 'none' }, 35],
    [{ highway: 'tertiary', surface: 'gravel' }, 25],
    [{ highway: 'unclassified', lanes: '1' }, 25],
    [{ highway: 'track' }, 10],
    [{ highway: 'track', tracktype: 'grade1' }, 25],
    [{ highway: 'track', tracktype: 'grade5' }, 5],
    [{ highway: 'residential', smoothness: 'very_bad' }, 10],
  ])('%j is driven at %s mph', async (tags, expected_mph) => {
    expect(await speed(tags)).toBeCloseTo(expected_mph, 5)
  })
  test('a posting of one direction slows that direction', async () => {
    const tags = { highway: 'tertiary', 'maxspeed:forward': '10 mph' }
    expect(await speed(tags)).toBeCloseTo(10, 5)
    expect(await speed(tags, 'B', 'A')).toBeCloseTo(35, 5)
  })
  test('a leg adds the time to get under way and stop, once', async () => {
    const found = await routeIn(block({}), 'A', 'C')
    expect(isRoute(found) && found.travel_s - found.drive_s - found.wait_s).toBeCloseTo(20, 9)
  })
  test('soft, narrow and unpaved stretches are cautioned with their length', async () => {
    const found = await routeIn(block({ highway: 'track', tracktype: 'grade4', width: '3' }), 'A', 'B')
    expect(isRoute(found) && found.cautions.map(({ code }) => code)).toEqual(['route-soft', 'route-narrow', 'route-unpaved'])
    expect(isRoute(found) && Number(found.cautions[0]?.values['length_mi'])).toBeCloseTo(isRoute(found) ? found.distance_mi : 0, 9)
  })
})
