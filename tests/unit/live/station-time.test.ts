import { expect, it } from 'vitest'
import { StationTime } from '@/app/_live/station-time'

it('is the station’s time whatever the device’s clock says, and takes the beat that came quickest', () => {
  let own = 1000
  const time = new StationTime(() => own)
  expect(time.now()).toBeUndefined()
  // The station's clock is 5,000,000 ms ahead; beats are on their way for 400, 20 and 900 ms.
  for (const [at, delay] of [[2000, 400], [12_000, 20], [22_000, 900]] as const) {
    own = at
    time.hear(5_000_000 + at - delay)
  }
  expect(time.now()! - (5_000_000 + own)).toBe(-20)
  own = 30_000
  expect(time.now()).toBe(5_030_000 - 20)
})

it('follows a station whose clock was set back, once what was heard before is old', () => {
  let own = 0
  const time = new StationTime(() => own)
  time.hear(100_000)
  own = 61_000
  time.hear(1000)
  expect(time.now()).toBe(1000)
})
