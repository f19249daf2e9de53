import { expect, test } from 'vitest'
import { formatPoint, parsePoint } from '@/app/_text'

test('a place is read in decimal degrees or degrees, minutes and seconds, latitude first', () => {
  for (const text of ['44.05120, -73.20410', '44.0512 N 73.2041 W', 'N44.0512 W73.2041', '44.0512;-73.2041', '44.05120, −73.20410', '44° 3′ 4.32″ N, 73° 12′ 14.76″ W']) {
    const parsed = parsePoint(text, 'Place')
    if (parsed.kind !== 'value') throw new Error(`${text}: ${parsed.kind}`)
    expect(parsed.value.lat, text).toBeCloseTo(44.0512, 6)
    expect(parsed.value.lon, text).toBeCloseTo(-73.2041, 6)
  }
})

test('a place off the map, the wrong way round or unreadable is refused with a sentence', () => {
  for (const text of ['95, 10', '10, 190', '73.2 W, 44.0 N', 'the mill', '44.05', "44° 75' N, 73 W"]) {
    const parsed = parsePoint(text, 'Draft site')
    expect(parsed.kind, text).toBe('refused')
    if (parsed.kind === 'refused') expect(parsed.sentence).toContain('Draft site')
  }
  expect(parsePoint(' ', 'Place')).toEqual({ kind: 'absent' })
})

test('a place as shown can be typed back', () => {
  const point = { lat: -12.34567, lon: 170.00012 }
  const parsed = parsePoint(formatPoint(point), 'Place')
  expect(parsed).toMatchObject({ kind: 'value', value: point })
})
