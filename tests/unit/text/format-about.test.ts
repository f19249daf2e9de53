import { describe, expect, it } from 'vitest'
import { formatAbout, formatWaterSurface } from '@/app/_text'

const plain = (text: string) => text.replaceAll('\u00a0', ' ')

describe('how much water there is', () => {
  it.each([
    [211_637_400, 'about 212 million gal'], [325_851, 'about 326,000 gal'], [4321, 'about 4,320 gal'], [999_999, 'about 1 million gal'], [87.6, 'about 87.6 gal'], [0, 'about 0 gal'],
  ])('%d gal is said to three digits', (value, expected) => {
    expect(plain(formatAbout(value, 'gal', 'us'))).toBe(expected)
  })

  it('is said in litres to as many', () => {
    expect(plain(formatAbout(325_851, 'gal', 'metric'))).toBe('about 1.23 million L')
  })
})

describe('a surface of water', () => {
  it.each([[43_560, '1 acre'], [17_424, '0.4 acre'], [1000, '0.02 acre'], [5_432_100, '125 acres'], [653_400, '15 acres']])('of %d sq ft is said in acres', (surface_sqft, expected) => {
    expect(plain(formatWaterSurface(surface_sqft, 'us'))).toBe(expected)
  })
})
