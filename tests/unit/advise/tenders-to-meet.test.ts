import { describe, expect, test } from 'vitest'
import { finish, requestList, tendersToMeet } from '@/lib/advise'
import { toMeetText } from '@/app/_advice/to-meet-text'
import { evaluatePlan } from '@/lib/supply'
import { smallBundle, smallBundleJson } from '@/tests/fixtures/bundle'

const asIs = <T>(bundle: T): T => bundle
const plain = (text: string) => text.replaceAll('\u00a0', ' ')
/** The small plan with so many tenders of its kind, through the door of every plan. */
const withTenders = (count: number, changes: Record<string, unknown> = {}) => {
  const [p1, p2, t1] = smallBundleJson.district.apparatus
  return smallBundle({
    'district.apparatus': [p1, p2, ...Array.from({ length: count }, (_, index) => ({ ...t1, id: `t${index + 1}`, name: `Tender ${index + 1}` }))],
    'plan.tenders': Array.from({ length: count }, (_, index) => ({ id: `k${index + 1}`, tenderId: `t${index + 1}` })), ...changes,
  })
}
const flowOf = (count: number, changes?: Record<string, unknown>) => evaluatePlan(withTenders(count, changes), { quick: true }).sustainable_gpm ?? 0

describe('how many more tenders meet a flow', () => {
  test('is the first number with which the plan, worked out as any plan, gives it', () => {
    const changes = { 'plan.dumpSites.0.positionCount': 2, 'plan.fillSites.0.bayCount': 2, 'plan.dumpSites.0.portableTankIds': undefined, 'plan.dumpSites.0.tankCapacity_gal': 8000 }
    const asked_gpm = flowOf(4, changes) - 1
    const found = finish(tendersToMeet(withTenders(2, changes), asked_gpm, asIs))
    expect(flowOf(3, changes)).toBeLessThan(asked_gpm)
    expect(found).toMatchObject({ likeId: 't1', count: 2, limit: null })
    expect(found?.flow_gpm).toBeCloseTo(flowOf(4, changes), 6)
  })

  test('is none where something else is the end of it, and says what', () => {
    const found = finish(tendersToMeet(withTenders(2), 5000, asIs))
    expect(found?.count).toBeNull()
    expect(found?.limit).not.toBeNull()
    expect(found?.flow_gpm).toBeGreaterThanOrEqual(flowOf(2))
    const words = found && plain(toMeetText(found, 'advice.to-meet', withTenders(2).district, (id) => ({ t1: 'Tender 1', f1: 'Mill pond fill', du1: 'Barn lane' })[id], 'us'))
    expect(words).toMatch(/^No single change meets the 5,000 gpm needed, and more tenders like Tender 1 \(2,000 gal\) do not with this layout: \d+ more of them hold [\d,]+ gpm expected at most\. With them .*(Mill pond fill|Barn lane).* limits it\.$/)
  })

  test('names what limits the plan as it stands as its own answer does', () => {
    const found = finish(tendersToMeet(withTenders(2), 5000, asIs))
    const now = evaluatePlan(withTenders(2)).limitingLink
    const named: Readonly<Record<string, string>> = { t1: 'Tender 1', f1: 'Mill pond fill', du1: 'Barn lane' }
    const words = found && plain(toMeetText(found, 'advice.to-meet', withTenders(2).district, (id) => named[id], 'us', now))
    expect(words).toContain(now?.kind === found?.limit?.kind && now?.subjectId === found?.limit?.subjectId ? 'What limits it stays' : 'as the plan stands')
  })

  test('is said where no set of the district carries what was asked', () => {
    const list = finish(requestList(withTenders(2), { flow_gpm: 5000, by_s: 3600 }, asIs))
    if (Array.isArray(list)) throw new Error('the plan must have a list')
    expect(list).toMatchObject({ outcome: 'short', beyond: { asked_gpm: 5000, count: null } })
  })

  test('leaves the plan as it was', () => {
    const bundle = withTenders(2)
    const before = structuredClone(bundle)
    finish(tendersToMeet(bundle, 5000, asIs))
    expect(bundle).toEqual(before)
  })
})
