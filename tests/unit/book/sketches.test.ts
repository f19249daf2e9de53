import { describe, expect, test } from 'vitest'
import { drawSketch } from '@/app/_book/draw/draw-sketch'
import { Page } from '@/app/_book/page/page'
import { startDocument } from '@/app/_book/pdf/type'
import { dumpSketch, fillSketch, headingFrom, headingOfWay, siteTraffic, tankSide_ft } from '@/lib/book'
import { shippedBundle } from '../demo/shipped-demo'
import { typeFiles } from './support/print-sheets'

const tanks = [{ id: 'a', capacity_gal: 3000, height_in: 29 }, { id: 'b', capacity_gal: 2100, height_in: 29 }]
const rectsOf = (sketch: ReturnType<typeof dumpSketch>, part: string) => sketch.rects.filter((rect) => rect.part === part)

describe('a dump site', () => {
  test('draws a tank as a square that holds its gallons (231 cubic inches a gallon, exact by definition)', () => {
    for (const { capacity_gal, height_in } of tanks) expect((tankSide_ft({ capacity_gal, height_in }) * 12) ** 2 * height_in / 231).toBeCloseTo(capacity_gal, 6)
    const [first] = rectsOf(dumpSketch({ pumperId: 'p' }, tanks), 'tank')
    expect(first?.across_ft).toBeCloseTo(first?.down_ft ?? 0, 9)
  })

  test('backs tenders in between road and tank, or lets them stand along it', () => {
    const backed = rectsOf(dumpSketch({ positionCount: 2, manner: 'backIn' }, tanks), 'tender')
    expect(backed.map(({ down_ft, across_ft }) => [down_ft, across_ft])).toEqual([[30, 8.5], [30, 8.5]])
    const along = rectsOf(dumpSketch({ positionCount: 2, manner: 'driveThrough' }, tanks), 'tender')
    expect(along.map(({ down_ft, across_ft }) => [down_ft, across_ft])).toEqual([[8.5, 30], [8.5, 30]])
  })

  test('joins tanks by a jet siphon each, towards the first, and dumps into the others', () => {
    const sketch = dumpSketch({ tankLink: 'jetSiphon', pumperId: 'p', positionCount: 1 }, tanks)
    const siphons = sketch.lines.filter(({ part }) => part === 'siphon')
    expect(siphons).toHaveLength(1)
    expect(siphons[0]!.points[1]![0]).toBeLessThan(siphons[0]!.points[0]![0])
    const [tender] = rectsOf(sketch, 'tender'), second = rectsOf(sketch, 'tank')[1]
    expect(tender!.x_ft + tender!.across_ft / 2).toBeCloseTo(second!.x_ft + second!.across_ft / 2, 6)
  })

  test('doubts more tenders side by side than the tanks have front', () => {
    expect(dumpSketch({ positionCount: 4, manner: 'backIn' }, tanks).doubts).toEqual([{ code: 'front-short', needed_ft: 44.5, has_ft: expect.closeTo(tankSide_ft(tanks[0]!) + tankSide_ft(tanks[1]!) + 3, 9) as number }])
    expect(dumpSketch({ positionCount: 1 }, tanks).doubts).toEqual([])
  })
})

describe('a fill site', () => {
  test('draws hard suction at its own length and doubts a fill line that does not reach', () => {
    const ask = { sourceKind: 'pond', suction_ft: 20, lineCount: 2, isDryHydrant: false, isFed: false } as const
    const sketch = fillSketch({ ...ask, site: { bayCount: 4, pumperId: 'p', fillLine: { size_in: 5, length_ft: 40 } } })
    const suctions = sketch.lines.filter(({ part }) => part === 'suction')
    expect(suctions).toHaveLength(2)
    for (const { points: [a, b] } of suctions) expect(Math.hypot(a![0] - b![0], a![1] - b![1])).toBeCloseTo(20, 9)
    const reach = sketch.lines.filter(({ part }) => part === 'fillLine').map(({ points: [a, b] }) => Math.hypot(a![0] - b![0], a![1] - b![1]))
    expect(sketch.doubts.map((doubt) => doubt.needed_ft)).toEqual(reach.filter((needed) => needed > 40))
    expect(sketch.doubts.length).toBeGreaterThan(0)
    expect(fillSketch({ ...ask, site: { bayCount: 1, pumperId: 'p', fillLine: { size_in: 5, length_ft: 100 } } }).doubts).toEqual([])
  })

  test('lies as the ways of the plan run: water down, north by the compass', () => {
    // A road that runs east past water to its south: x is east, so north is up.
    expect(fillSketch({ site: {}, suction_ft: 20, lineCount: 1, isDryHydrant: false, isFed: false, traffic: { arriving_deg: 90, leaving_deg: 90, towards_deg: 180 } }).x_deg).toBe(90)
    // Water to its north: the sketch is turned round, x is west.
    const turned = fillSketch({ site: {}, suction_ft: 20, lineCount: 1, isDryHydrant: false, isFed: false, traffic: { arriving_deg: 90, leaving_deg: 90, towards_deg: 0 } })
    expect(turned.x_deg).toBe(270)
    const [from, to] = turned.lines.find(({ part }) => part === 'arriving')!.points
    expect(to![0]).toBeLessThan(from![0])
  })
})

test('headings are those of the compass', () => {
  const here = { lat: 43, lon: -72 }
  expect(headingFrom(here, { lat: 43.01, lon: -72 })).toBeCloseTo(0, 6)
  expect(headingFrom(here, { lat: 43, lon: -71.99 })).toBeCloseTo(90, 6)
  expect(headingFrom(here, { lat: 42.99, lon: -72 })).toBeCloseTo(180, 6)
  expect(headingOfWay([here, { lat: 43.01, lon: -72 }, { lat: 43.01, lon: -71.98 }], 'end')).toBeCloseTo(90, 6)
  expect(headingOfWay([here, { lat: 43.01, lon: -72 }, { lat: 43.01, lon: -71.98 }], 'start')).toBeCloseTo(0, 6)
  expect(headingOfWay([here], 'end')).toBeUndefined()
})

test('traffic at a site is that of the ways its tenders drive', () => {
  const bundle = shippedBundle('plan-gander-hill')
  const { arriving_deg, leaving_deg } = siteTraffic(bundle, 'dump-gander-lane')
  expect(arriving_deg).toBeDefined()
  expect(leaving_deg).toBeDefined()
  expect(siteTraffic({ ...bundle, legs: [] }, 'dump-gander-lane')).not.toHaveProperty('arriving_deg')
})

test.each(['us', 'metric'] as const)('a sketch in %s comes out at the scale it says, measured on its lines', (system) => {
  const { measure } = startDocument(typeFiles, { title: 't', date: new Date(0) })
  const page = new Page('a4', measure)
  const sketch = dumpSketch({ positionCount: 2, pumperId: 'p' }, tanks)
  const { pointsPerFoot, label } = drawSketch(page, measure, sketch, { left: 40, top: 100, right: 540, bottom: 400 }, system, { rect: () => [], line: () => '' })
  // 1 in = 72 points; 1 ft = 304.8 mm, exact by definition.
  const said = Number(label.replace(/^1 (in = |: )/, '').replace(/[^\d]/g, ''))
  expect(pointsPerFoot).toBeCloseTo(system === 'us' ? 72 / said : (304.8 / 25.4) * 72 / said, 9)
  const outlines = page.marks.flatMap((mark) => (mark.kind === 'shape' && mark.fill === 'waterSoft' && mark.stroke === 'water' ? [mark.path] : []))
  const widths = outlines.map((path) => { const xs = [...path.matchAll(/[ML](-?[\d.]+) /g)].map(([, x]) => Number(x)); return Math.max(...xs) - Math.min(...xs) })
  expect(widths).toHaveLength(2)
  tanks.forEach((tank, i) => { expect(widths[i]! / pointsPerFoot).toBeCloseTo(tankSide_ft(tank), 1) })
})
