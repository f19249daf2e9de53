import { expect, test } from 'vitest'
import { demoLogs } from '@/app/_demo/documents/demo-logs'
import { estimateNow, logWorld, readLog } from '@/lib/field-log'
import { logSchema, siteEventSchema } from '@/lib/plan'
import { shippedBundle } from './shipped-demo'

const logs = demoLogs(new Map(['plan-gander-hill', 'plan-yarrow-bank'].map((id) => [id, shippedBundle(id)])))
const read = ({ log, events }: (typeof logs)[number]) => readLog(events, logWorld(log))
const [clean, messy] = logs as [(typeof logs)[number], (typeof logs)[number]]

test('both logs and every event in them are as their schemas ask, and each id is there once', () => {
  for (const { log, events } of logs) {
    expect(logSchema.safeParse(log).success).toBe(true)
    for (const event of events) expect(siteEventSchema.safeParse(event).error?.issues).toBeUndefined()
    expect(new Set(events.map(({ id }) => id)).size).toBe(events.length)
    expect(events.length).toBeGreaterThan(60)
  }
})

test('the clean one contradicts nothing, and its clocks agree', () => {
  const { issues, clocks } = read(clean)
  // The phones at the attack and at the draft pumper see no tender, so nothing can tie their clocks to the others.
  expect(issues.map(({ code, values }) => `${code} ${values.device}`)).toEqual(['log-clock-unlinked attack-phone-1', 'log-clock-unlinked draft-phone-1'])
  for (const { shift_s } of clocks) expect(shift_s).toBe(0)
})

test('the messy one has a clock that is ahead, found within its doubt, doubles, and steps out of order', () => {
  const { issues, clocks } = read(messy)
  const codes = issues.map(({ code }) => code)
  for (const code of ['log-clock-shifted', 'log-doubled', 'log-out-of-order']) expect(codes).toContain(code)
  const of = (device: string) => clocks.find((clock) => clock.device === device)!
  const ahead_s = of('fill-phone-2').shift_s - of('dump-phone-2').shift_s
  expect(Math.abs(ahead_s - 437)).toBeLessThanOrEqual(Math.max(of('fill-phone-2').doubt_s, of('dump-phone-2').doubt_s) + 5)
})

test('something can be told in the middle of either', () => {
  for (const one of logs) {
    const now = estimateNow(read(one).events, logWorld(one.log), one.log.dispatched_ms! + 3_600_000, one.log.dispatched_ms)
    expect(now.flow.basis).toBe('readings')
    expect(now.tanks.length).toBeGreaterThan(0)
    expect(now.road.length + now.posts.length).toBeGreaterThan(0)
  }
})
