import { describe, expect, test } from 'vitest'
import { findRoute, isRoute, weighGraph, type RoadNoteLike } from '@/lib/roads'
import { graphOf, loaded, placeIn, placeOf, routeIn, wayIn, type Town } from './town'

const town = (short: Record<string, string> = {}, nodeTags: Town['nodeTags'] = {}): Town => ({
  grid: `
    ABC
    ...
    ...
    D.F`,
  ways: [
    { id: 1, through: 'AB', tags: { highway: 'tertiary', name: 'Straight Road' } },
    { id: 3, through: 'BC', tags: { highway: 'tertiary', name: 'Mill Bridge', bridge: 'yes', ...short } },
    { id: 2, through: 'ADFC', tags: { highway: 'tertiary', name: 'Long Road' } },
  ],
  nodeTags,
})
const note = (fields: Omit<RoadNoteLike, 'id' | 'point'>): RoadNoteLike => ({ id: 'n1', point: placeIn(town(), 'BC'), ...fields })

describe('a road note stands against the data', () => {
  test.each([[{ closed: true }], [{ maxWeight_lb: 40_000 }], [{ maxHeight_ft: 10 }], [{ maxWidth_ft: 8 }], [{ oneWay: 'backward' as const }], [{ speed_mph: 2 }]])(
    '%j sends the tender around', async (fields) => {
      expect(await wayIn(town(), 'A', 'C', { notes: [note(fields)] })).toBe('ADFC')
    },
  )
  test('a higher posting than the data lets the tender through, and is listed as noted', async () => {
    expect(await wayIn(town({ maxweight: '10' }), 'A', 'C')).toBe('ADFC')
    const found = await routeIn(town({ maxweight: '10' }), 'A', 'C', { notes: [note({ maxWeight_lb: 60_000 })] })
    expect(isRoute(found) && found.limits.map(({ limit, isNoted }) => [limit, isNoted])).toEqual([[60_000, true]])
    expect(isRoute(found) && found.cautions).toEqual([])
  })
  test('what a note does not say stays as the data has it', async () => {
    expect(await wayIn(town({ maxheight: '3' }), 'A', 'C', { notes: [note({ maxWeight_lb: 60_000 })] })).toBe('ADFC')
  })
  test('a note opens a closed road, a one-way, and a barrier beside it', async () => {
    expect(await wayIn(town({ motor_vehicle: 'no' }), 'A', 'C', { notes: [note({ closed: false })] })).toBe('ABC')
    expect(await wayIn(town({ oneway: '-1' }), 'A', 'C', { notes: [note({ oneWay: 'no' })] })).toBe('ABC')
    const barred = town({}, { B: { barrier: 'bollard' } })
    expect(await wayIn(barred, 'A', 'C')).toBe('ADFC')
    expect(await wayIn(barred, 'A', 'C', { notes: [{ id: 'n1', point: placeOf(town(), 'B'), closed: false }] })).toBe('ABC')
  })
  test('opening a road does not lift its limits', async () => {
    expect(await wayIn(town({ motor_vehicle: 'no', maxweight: '10' }), 'A', 'C', { notes: [note({ closed: false })] })).toBe('ADFC')
  })
  test('of two notes on one road the later stands, field by field', async () => {
    const notes = [note({ closed: true, maxWeight_lb: 60_000 }), { ...note({ closed: false }), id: 'n2' }]
    expect(await wayIn(town({ maxweight: '10' }), 'A', 'C', { notes })).toBe('ABC')
  })
  test('where a note took hold is told, and one far from any road is an issue', async () => {
    const graph = await graphOf(town())
    const far = { id: 'n2', point: { lat: 45.2, lon: -100 }, closed: true }
    const { holds, issues } = weighGraph(graph, loaded, [note({ closed: true }), far])
    expect(holds.map(({ noteId }) => noteId)).toEqual(['n1'])
    expect(holds[0]?.distance_ft).toBeLessThan(1)
    expect(issues).toMatchObject([{ code: 'road-note-off-network', subjectIds: ['n2'] }])
  })
})

describe('no route says why', () => {
  const only = (tags: Record<string, string>, nodeTags: Town['nodeTags'] = {}): Town => ({ ...town(tags, nodeTags), ways: town(tags).ways.filter(({ id }) => id !== 2) })
  test('the bridge, its posting and the vehicle are named', async () => {
    expect(await routeIn(only({ maxweight: '10' }), 'A', 'C')).toMatchObject({
      code: 'route-off-network', values: { end: 'to', name: 'Straight Road', nearestName: 'Mill Bridge', nearest_ft: 0, reason: 'weight' },
    })
    const beyond = { ...only({ maxweight: '10' }), grid: 'ABCX' }
    beyond.ways = [...beyond.ways, { id: 9, through: 'CX', tags: { highway: 'tertiary' } }]
    const blocked = await routeIn(beyond, 'A', 'X')
    expect(blocked).toMatchObject({ code: 'route-blocked', severity: 'block', values: { reason: 'weight', name: 'Mill Bridge', vehicle_lb: 46_000, roadId: 3, obstacleCount: 1 } })
    expect(!isRoute(blocked) && Number(blocked.values['limit_lb'])).toBeCloseTo(22_046.2, 0)
  })
  test('of several ways the one with fewest obstacles is told, and all on it', async () => {
    const chain: Town = {
      grid: 'ABCDE',
      ways: [
        { id: 1, through: 'AB', tags: { highway: 'tertiary' } },
        { id: 2, through: 'BC', tags: { highway: 'tertiary', name: 'Low Arch', maxheight: '3' } },
        { id: 3, through: 'CD', tags: { highway: 'tertiary', name: 'Ford Lane', ford: 'yes' } },
        { id: 4, through: 'DE', tags: { highway: 'tertiary' } },
      ],
    }
    expect(await routeIn(chain, 'A', 'E')).toMatchObject({
      code: 'route-blocked', values: { reason: 'height', name: 'Low Arch', vehicle_ft: 10.5, obstacleCount: 2, others: 'ford Ford Lane' },
    })
  })
  test('a note that closes the road is named', async () => {
    const beyond: Town = { grid: 'ABCX', ways: [...only({}).ways, { id: 9, through: 'CX', tags: { highway: 'tertiary' } }] }
    expect(await routeIn(beyond, 'A', 'X', { notes: [note({ closed: true })] })).toMatchObject({ code: 'route-blocked', values: { reason: 'closed', noteId: 'n1' } })
  })
  test('a barrier and a one-way are named', async () => {
    const beyond = (tags: Record<string, string>, nodeTags: Town['nodeTags'] = {}): Town => ({
      grid: 'ABCX', nodeTags, ways: [...only(tags).ways, { id: 9, through: 'CX', tags: { highway: 'tertiary' } }],
    })
    expect(await routeIn(beyond({}, { C: { barrier: 'bollard' } }), 'A', 'X')).toMatchObject({ values: { reason: 'barrier', name: 'Mill Bridge' } })
    expect(await routeIn(beyond({ oneway: '-1' }), 'A', 'X')).toMatchObject({ values: { reason: 'oneWay', name: 'Mill Bridge' } })
  })
  test('roads that never meet are unconnected', async () => {
    const apart: Town = { grid: 'AB..CD', ways: [{ id: 1, through: 'AB', tags: { highway: 'tertiary' } }, { id: 2, through: 'CD', tags: { highway: 'tertiary' } }] }
    expect(await routeIn(apart, 'A', 'D')).toMatchObject({ code: 'route-unconnected', values: { fromJunctionCount: 2, toJunctionCount: 2 } })
  })
})

describe('from the pin to the road', () => {
  test('a pin far from any road is off the network, with the nearest road and how far', async () => {
    const found = await routeIn(town(), 'A', 'C', { to: { lat: 45.01, lon: -99.98 } })
    expect(found).toMatchObject({ code: 'route-off-network', severity: 'block', values: { end: 'to', name: 'Mill Bridge' } })
    // A hundredth of a degree of latitude is 1.112 km on the sphere of the IUGG mean radius.
    expect(!isRoute(found) && Number(found.values['distance_ft'])).toBeCloseTo(1111.95 / 0.3048, -1)
  })
  test('the reach can be widened; a gap worth knowing is cautioned', async () => {
    const found = await routeIn(town(), 'A', 'C', { to: { lat: 45.01, lon: -99.98 }, reach_ft: 5000, vehicle: loaded })
    expect(isRoute(found) && found.cautions.map(({ code }) => code)).toContain('route-end-off-road')
  })
  test('only a road this vehicle can use is taken, and the nearer one is told', async () => {
    const lanes: Town = {
      grid: `
        AB
        CD`,
      ways: [
        { id: 1, through: 'AB', tags: { highway: 'tertiary', name: 'Weak Lane', maxweight: '3.5' } },
        { id: 2, through: 'CD', tags: { highway: 'tertiary', name: 'Firm Road' } },
      ],
    }
    const graph = await graphOf(lanes)
    const from = { lat: 44.9995, lon: -99.997 }
    const found = findRoute(graph, weighGraph(graph, loaded), from, placeOf(lanes, 'D'), [], { reach_ft: 4000 })
    expect(isRoute(found) && found.cautions[0]).toMatchObject({ code: 'route-nearer-road-unusable', values: { end: 'from', reason: 'weight', name: 'Weak Lane' } })
    expect(isRoute(found) && found.steps.map(({ name }) => name)).toEqual(['Firm Road'])
  })
  test('at a junction a vehicle leaves by any road of it, one-way ones included', async () => {
    const junction: Town = {
      grid: `
        ABC
        .D.`,
      ways: [
        { id: 1, through: 'AB', tags: { highway: 'tertiary', oneway: 'yes' } }, { id: 2, through: 'BC', tags: { highway: 'tertiary' } },
        { id: 3, through: 'BD', tags: { highway: 'tertiary' } },
      ],
    }
    expect(await wayIn(junction, 'B', 'C')).toBe('BC')
    expect(await wayIn(junction, 'C', 'B')).toBe('CB')
    expect(await wayIn(junction, 'B', 'B')).toBe('B')
  })
  test('steps name the roads in order with their lengths', async () => {
    const found = await routeIn(town(), 'A', 'C')
    expect(isRoute(found) && found.steps.map(({ name }) => name)).toEqual(['Straight Road', 'Mill Bridge'])
    expect(isRoute(found) && found.steps.reduce((sum, { distance_mi }) => sum + distance_mi, 0)).toBeCloseTo(isRoute(found) ? found.distance_mi : 0, 9)
  })
})
