import { expect, test } from 'vitest'
import { shiftsFrom } from '@/app/_log/shifts-from'
import { deviceClocks, logWorld } from '@/lib/field-log'
import { demoBundle } from '@/tests/fixtures/demo-roads'
import { loggedDrill } from '@/tests/fixtures/logged-drill'

const { log, events } = loggedDrill(demoBundle('gander-hill'), { id: 'log-1', name: 'Drill', seed: 7, roadFactor: 1, dropShare: 0, clock_s: 435, isOneMissing: false })
const clocks = deviceClocks(events, logWorld(log))

test('times of a phone that is 7 minutes 15 seconds fast are put right by as much, read on the other phone', () => {
  const shift_ms = shiftsFrom(clocks, 'phone-dump')
  expect(shift_ms('phone-dump')).toBe(0)
  expect(Math.abs(shift_ms('phone-fill') + 435_000)).toBeLessThan(60_000)
  // Read on the fast phone itself its own times stand, and the others' are laid on them.
  expect(shiftsFrom(clocks, 'phone-fill')('phone-fill')).toBe(0)
  expect(shiftsFrom(clocks, 'phone-fill')('phone-dump')).toBe(-shift_ms('phone-fill'))
})

test('times of a phone that nothing ties to the others stand', () => {
  const lone = clocks.map((clock) => (clock.device === 'phone-fill' ? { ...clock, basis: 'unlinked' as const } : clock))
  expect(shiftsFrom(lone, 'phone-dump')('phone-fill')).toBe(0)
})
