import { expect, test } from 'vitest'
import { waterHeld } from '@/app/_compare/water-held'

const tank = (levels: readonly (readonly [number, number])[]) => ({ id: 'du1', capacity_gal: 2000, levels: levels.map(([time_s, level_gal]) => ({ time_s, level_gal })) })

test('water in all tanks is the sum of their levels at every moment at which one of them turns', () => {
  const held = waterHeld({ tanks: [tank([[0, 0], [100, 1000]]), tank([[50, 0], [50, 300], [150, 300]])] })
  expect(held.map(({ time_s, held_gal }) => [time_s, held_gal])).toEqual([[0, 0], [50, 800], [100, 1300], [150, 1300]])
  expect(waterHeld({ tanks: [] })).toEqual([])
})
