import { describe, expect, it } from 'vitest'
import { hitCells, type HitSpot } from '@/app/_map/hit-cells'

/** Whether a place on the screen hits the symbol there, by the rule of the even and the odd crossing. */
function isHit(spot: HitSpot, cell: HitSpot[] | undefined, at: HitSpot): boolean {
  const x = at.x - spot.x + 24, y = at.y - spot.y + 24
  if (!cell) return x >= 0 && x <= 48 && y >= 0 && y <= 48
  return cell.filter((from, i) => {
    const to = cell[(i + 1) % cell.length]!
    return from.y > y !== to.y > y && x < ((to.x - from.x) * (y - from.y)) / (to.y - from.y) + from.x
  }).length % 2 === 1
}

describe('where a symbol can be hit', () => {
  it('is the whole square where no other is near', () => {
    expect(hitCells([{ x: 0, y: 0 }, { x: 70, y: 0 }], 48)).toEqual([undefined, undefined])
  })

  it('ends half way to the next symbol', () => {
    const [cell] = hitCells([{ x: 0, y: 0 }, { x: 30, y: 0 }], 48)
    expect(Math.max(...cell!.map(({ x }) => x))).toBe(24 + 15)
    expect(Math.min(...cell!.map(({ x }) => x))).toBe(0)
  })

  it('is never that of two symbols, and a tap takes the nearest within reach', () => {
    const spots = [{ x: 0, y: 0 }, { x: 20, y: 8 }, { x: -9, y: 26 }, { x: 31, y: -17 }, { x: 12, y: 40 }]
    const cells = hitCells(spots, 48)
    for (let x = -30.5; x < 60; x += 3) {
      for (let y = -45.5; y < 70; y += 3) {
        const hit = spots.flatMap((spot, k) => (isHit(spot, cells[k], { x, y }) ? [k] : []))
        const away = spots.map((spot) => Math.hypot(spot.x - x, spot.y - y))
        const nearest = away.indexOf(Math.min(...away))
        const inReach = Math.max(Math.abs(spots[nearest]!.x - x), Math.abs(spots[nearest]!.y - y)) < 24
        expect(hit, `${x} ${y}`).toEqual(inReach ? [nearest] : [])
      }
    }
  })

  it('is left whole for symbols at one place: the one on top is hit', () => {
    expect(hitCells([{ x: 5, y: 5 }, { x: 7, y: 5 }], 48)).toEqual([undefined, undefined])
  })
})
