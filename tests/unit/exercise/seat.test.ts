import { describe, expect, it } from 'vitest'
import { followFacts, happeningsOf, hearsOf, isInOrder, isSession, mayDecide, newsFor, playSession, replay, seatDecisions, seatRoles, seenFrom, startSession, stateAt, takeEffect, toldOf, viewOf, wholeViewOf, type Seat, type Session } from '@/lib/exercise'
import { applyEdit, type Change, type EditableDocument, type EditBody, type Exercise, type Fact } from '@/lib/plan'
import { demoBundle } from './demo-bundle'

const bundle = demoBundle()
const [fillSiteId, dumpSiteId, tenderId] = [bundle.plan.fillSites[0]!.id as string, bundle.plan.dumpSites[0]!.id as string, bundle.plan.tenders[0]!.tenderId as string]
const seats = { waterSupply: { role: 'waterSupply' }, attack: { role: 'attack' }, dump: { role: 'dumpSite', siteId: dumpSiteId }, fill: { role: 'fillSite', siteId: fillSiteId }, elsewhere: { role: 'fillSite', siteId: 'another' } } as const satisfies Record<string, Seat>
const who = Object.keys(seats) as (keyof typeof seats)[]

/** One change of every kind there is. */
const changes: readonly Change[] = [
  { kind: 'plan', edits: [{ doc: 'plan', body: { kind: 'addItem', collection: 'tenders', item: { id: 'k9', tenderId: 'T9', notes: 'secret' } } }, { doc: 'district', body: { kind: 'setFields', set: { name: 'secret' } } }] },
  { kind: 'tenderOut', tenderId },
  { kind: 'unitLate', unitId: tenderId, delay_s: 600 },
  { kind: 'fillRate', fillSiteId, rateShare: 0 },
  { kind: 'sourceLow', fillSiteId, leftShare: 0.25 },
  { kind: 'tankLeak', dumpSiteId, leak_gpm: 120 },
  { kind: 'tankTips', dumpSiteId, lostShare: 1 },
  { kind: 'layRate', layId: 'L1', rateShare: 0 },
  { kind: 'moreDemand', add_gpm: 250 },
  { kind: 'demand', flow_gpm: 500 },
  { kind: 'sendTender', tenderId, fillSiteId: 'another' },
]

function begun(): Session {
  const session = startSession(bundle)
  if (!isSession(session)) throw new Error(JSON.stringify(session))
  return session
}
const fact = (id: string, at_s: number, change: Change, cause: Fact['cause'] = 'decision', by = 'water supply officer'): Fact => ({ id, at_s, cause, by, change })

describe('what a seat sees', () => {
  const whole = wholeViewOf(playSession(begun(), 1500))

  it('is the place it sits at, and nothing of any other', () => {
    expect(whole.tanks.length * whole.fills.length * whole.tenders.length).toBeGreaterThan(0)
    expect(seenFrom(whole, 'attack')).toEqual({ fire: { flow_gpm: whole.flow_gpm, asked_gpm: whole.asked_gpm, isCounting: true, shortfall: whole.shortfall }, engine_gal: whole.engine_gal, isEngineHeld: whole.isEngineHeld, tanks: [], fills: [], tenders: [] })
    expect(seenFrom(whole, 'waterSupply')).toMatchObject({ tanks: [], fills: [], tenders: whole.tenders })
    const dump = seenFrom(whole, 'dumpSite', dumpSiteId)
    expect(dump).toEqual({ tanks: whole.tanks.filter((tank) => tank.dumpSiteId === dumpSiteId), fills: [], tenders: whole.tenders.filter(({ siteId }) => siteId === dumpSiteId) })
    const fill = seenFrom(whole, 'fillSite', fillSiteId)
    expect(Object.keys(fill).sort()).toEqual(['fills', 'tanks', 'tenders'])
    for (const tender of fill.tenders) expect(tender.siteId).toBe(fillSiteId)
    expect(seenFrom(whole, 'fillSite')).toEqual({ tanks: [], fills: [], tenders: [] })
  })

  it('of who leads is all of it', () => {
    const { shortfall, isCounting, flow_gpm, asked_gpm, ...rest } = whole
    expect(seenFrom(whole, 'facilitator')).toEqual({ ...rest, fire: { flow_gpm, asked_gpm, isCounting, shortfall } })
    expect(viewOf(playSession(begun(), 1500))).toEqual({ ...rest, flow_gpm, asked_gpm })
  })
})

describe('what a seat hears', () => {
  const heardBy = (change: Change, cause: Fact['cause']) => who.filter((name) => hearsOf({ cause, change }, seats[name])).join(' ')

  it('of a trouble is what can be seen from there or is told to it, and never an order that was misheard', () => {
    expect(changes.map((change) => [change.kind, heardBy(change, 'inject')])).toEqual([
      ['plan', ''], ['tenderOut', 'waterSupply'], ['unitLate', 'waterSupply'], ['fillRate', 'fill'], ['sourceLow', 'fill'], ['tankLeak', 'dump'], ['tankTips', 'dump'],
      ['layRate', 'waterSupply'], ['moreDemand', 'attack'], ['demand', 'attack'], ['sendTender', ''],
    ])
  })

  it('of a decision is what concerns it; water supply hears every order', () => {
    for (const change of changes) expect(heardBy(change, 'decision'), change.kind).toContain('waterSupply')
    expect(heardBy({ kind: 'sendTender', tenderId, fillSiteId: 'another' }, 'decision')).toBe('waterSupply elsewhere')
  })

  it('of a changed plan is who was called, nothing else', () => {
    expect(toldOf(changes[0]!)).toEqual({ kind: 'plan', edits: [{ doc: 'plan', body: { kind: 'addItem', collection: 'tenders', item: { id: 'k9', tenderId: 'T9' } } }] })
  })
})

describe('what a seat decides', () => {
  it('is what each role may, on its own site, and never a trouble', () => {
    const allowed = who.map((name) => [name, changes.filter((change) => mayDecide(change, seats[name])).map(({ kind }) => kind).join(' ')])
    expect(allowed).toEqual([['waterSupply', 'tenderOut sendTender'], ['attack', 'demand'], ['dump', ''], ['fill', ''], ['elsewhere', '']])
    const well: readonly Change[] = [{ kind: 'fillRate', fillSiteId, rateShare: 1 }, { kind: 'tankLeak', dumpSiteId, leak_gpm: 0 }, { kind: 'layRate', layId: 'L1', rateShare: 1 }]
    expect(who.map((name) => [name, well.filter((change) => mayDecide(change, seats[name])).map(({ kind }) => kind).join(' ')])).toEqual([['waterSupply', 'layRate'], ['attack', ''], ['dump', 'tankLeak'], ['fill', 'fillRate'], ['elsewhere', '']])
    expect(mayDecide({ kind: 'sendTender', tenderId }, seats.waterSupply)).toBe(false)
    expect(Object.keys(seatDecisions).sort()).toEqual([...seatRoles].sort())
  })
})

describe('what is in order', () => {
  it('cannot be set right, and what has broken can until somebody has', () => {
    const right: Change = { kind: 'tankLeak', dumpSiteId, leak_gpm: 0 }
    const leaks = takeEffect({ ...begun(), clock_s: 600 }, fact('leak', 600, { kind: 'tankLeak', dumpSiteId, leak_gpm: 120 }, 'inject', '')) as Session
    const mended = takeEffect({ ...leaks, clock_s: 900 }, fact('mend', 900, right)) as Session
    expect([begun(), leaks, mended].map(({ now }) => isInOrder(now.world, right))).toEqual([true, false, true])
    expect(isInOrder(leaks.now.world, { kind: 'fillRate', fillSiteId, rateShare: 1 })).toBe(true)
    expect(isInOrder(begun().now.world, { kind: 'tankLeak', dumpSiteId, leak_gpm: 120 })).toBe(false)
  })
})

describe('happenings', () => {
  const start: Exercise = { format: 'millrace-exercise', version: 1, id: 'E1', name: 'Night', districtId: 'D1', bundle, injects: [{ id: 'i1', title: 'secret', told: 'Engine 11 has lost its prime', trigger: { kind: 'hand' }, change: changes[3]! }], facts: [fact('f0', 60, changes[9]!)], notes: [] }
  const bodies: EditBody[] = [
    { kind: 'setFields', set: { clock: { at_s: 0, isRunning: true, speedFactor: 10, setAt: '2026-01-01T00:00:00Z' } } },
    { kind: 'addItem', collection: 'injects', item: { id: 'i2', title: 'secret', trigger: { kind: 'hand' }, change: changes[6] } },
    { kind: 'addItem', collection: 'facts', item: { ...fact('f1', 600, changes[3]!, 'inject', ''), injectId: 'i1' } },
    { kind: 'addItem', collection: 'notes', item: { id: 'n1', at_s: 610, by: 'Fill site: Ann', role: 'fillSite', text: 'Trying again' } },
    { kind: 'addItem', collection: 'facts', item: fact('f2', 700, { kind: 'tenderOut', tenderId }) },
    { kind: 'removeItem', collection: 'facts', id: 'f0' },
    { kind: 'removeItem', collection: 'facts', id: 'f2' },
    { kind: 'setFields', set: { name: 'Night two' } },
    { kind: 'setFields', set: { endedAt_s: 900 } },
  ]
  const applied = bodies.reduce<{ doc: Exercise; edits: { body: EditBody; inverse: EditBody }[] }[]>((all, body) => {
    const { doc, edits } = all.at(-1)!
    const made = applyEdit(doc as unknown as EditableDocument, body)
    if ('code' in made) throw new Error(JSON.stringify(made))
    return [...all, { doc: made.doc as unknown as Exercise, edits: [...edits, { body, inverse: made.inverse }] }]
  }, [{ doc: start, edits: [] }])
  const heard = (at: { doc: Exercise; edits: { body: EditBody; inverse: EditBody }[] }, seat: Seat, by: string) =>
    happeningsOf(at.doc, at.edits).flatMap((one) => newsFor(one, seat, by, (id) => at.doc.injects.find((inject) => inject.id === id)?.told) ?? [])

  it('keep their places however far the exercise goes on', () => {
    for (const name of who) {
      const last = heard(applied.at(-1)!, seats[name], 'x')
      for (const earlier of applied) {
        const then = heard(earlier, seats[name], 'x')
        expect(last.slice(0, then.length)).toEqual(then)
      }
    }
  })

  it('begin with what the exercise was made with: its clock and its end, whatever was set since', () => {
    const clock = { at_s: 300, isRunning: false, speedFactor: 5, setAt: '2026-01-01T00:00:00Z' }
    const whole = applied.at(-1)!
    const inverse = whole.edits.map((edit) => (edit.body.kind === 'setFields' && 'clock' in edit.body.set ? { ...edit, inverse: { kind: 'setFields' as const, set: { clock } } } : edit))
    expect(happeningsOf(whole.doc, inverse)[0]).toEqual({ kind: 'clock', clock })
    expect(happeningsOf({ ...start, clock, endedAt_s: 400 }, []).map(({ kind }) => kind)).toEqual(['clock', 'fact', 'ended'])
    expect(happeningsOf({ ...start, clock }, []).map(({ kind }) => kind)).toEqual(['clock', 'fact'])
  })

  it('reach each seat as its own news, without the title of any trouble and without one that has not come', () => {
    const kinds = Object.fromEntries(who.map((name) => [name, heard(applied.at(-1)!, seats[name], `${name}: Ann`).map((one) => ('id' in one ? `${one.kind} ${one.id}` : one.kind)).join(', ')]))
    expect(kinds).toEqual({
      waterSupply: 'fact f0, clock, fact f2, factGone f0, factGone f2, ended', attack: 'fact f0, clock, factGone f0, ended', dump: 'clock, ended', fill: 'clock, fact f1, ended', elsewhere: 'clock, ended',
    })
    for (const name of who) expect(JSON.stringify(heard(applied.at(-1)!, seats[name], 'x'))).not.toContain('secret')
    expect(heard(applied.at(-1)!, seats.fill, 'x')).toContainEqual(expect.objectContaining({ id: 'f1', told: 'Engine 11 has lost its prime' }))
    // What somebody decided or wrote there is heard of there, and a note nowhere else.
    expect(heard(applied.at(-1)!, seats.fill, 'Fill site: Ann').map(({ kind }) => kind)).toContain('note')
    expect(heard(applied.at(-1)!, seats.elsewhere, 'water supply officer').map(({ kind }) => kind)).toContain('factGone')
  })
})

describe('following facts', () => {
  const facts = [fact('a', 600, { kind: 'demand', flow_gpm: 300 }), fact('b', 900, { kind: 'tenderOut', tenderId: 'nobody' }), fact('c', 1200, { kind: 'tankTips', dumpSiteId, lostShare: 1 }), fact('d', 1500, { kind: 'tenderOut', tenderId })]
  const endOf = (session: Session | unknown) => stateAt({ ...(session as Session), clock_s: 3000 })

  it('ends where a replay ends, fact by fact or at once, in whatever order they were written down', () => {
    const whole = replay(bundle, facts, 1500)
    expect(endOf(followFacts(bundle, facts.toReversed()).session)).toEqual(endOf(whole))
    let followed = followFacts(bundle, [])
    for (let count = 1; count <= facts.length; count++) followed = followFacts(bundle, facts.slice(0, count), followed)
    expect(endOf(followed.session)).toEqual(endOf(whole))
  })

  it('begins anew when one is taken back, or comes before what was followed', () => {
    const followed = followFacts(bundle, [facts[0]!, facts[3]!])
    expect(endOf(followFacts(bundle, [facts[0]!], followed).session)).toEqual(endOf(replay(bundle, [facts[0]!], 1500)))
    expect(endOf(followFacts(bundle, facts, followed).session)).toEqual(endOf(replay(bundle, facts, 1500)))
  })
})
