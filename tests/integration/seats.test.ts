import { readFileSync } from 'node:fs'
import path from 'node:path'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { EventReader, type StreamEvent } from '@/app/_live/event-text'
import { LiveStream, type LiveState } from '@/app/_live/live-stream'
import { idOfNumber, numberOfId, type SeatAnswer, type SeatInfo } from '@/app/_seat/seat-messages'
import { afterEvent, emptySeat, type SeatState } from '@/app/_seat/seat-state'
import { RULES } from '@/app/_server/devices/access'
import { GRANT_COOKIE, makeGrant, revokeGrant, SEAT_COOKIE } from '@/app/_server/devices/grants'
import { makeJoinCode } from '@/app/_server/devices/join-codes'
import { pageAccess } from '@/app/_server/devices/page-access'
import type { Scope, SeatScope } from '@/app/_devices/scope'
import { findViewer } from '@/app/_server/devices/viewer'
import { createDocument, getDocument, softDelete } from '@/app/_server/documents'
import { Room } from '@/app/_server/exercise/room'
import { readRunning } from '@/app/_server/exercise/running'
import { personAt, siteNameOf } from '@/app/_server/exercise/seat-info'
import { onChanged } from '@/app/_server/live/changes'
import { newsFor } from '@/lib/exercise'
import { isBundle, readBundle, type Change, type EditableDocument, type Exercise } from '@/lib/plan'
import { district, plan } from './support/documents'
import { serveRoutes } from './support/route-server'
import { root, scratchDatabase, type Scratch } from './support/scratch-database'

const held = globalThis as typeof globalThis & { millraceDatabase?: unknown; millraceWaySecret?: string; millraceRooms?: unknown; millraceActs?: unknown; millraceActLimit?: unknown; millraceJoinLimit?: unknown }
const SECRET = 's'.repeat(64)
const NETWORK = `${SECRET} network 192.168.1.20`
const SECRET_WORDS = ['Secret trouble', 'Nobody may read this', 'Hidden tip']

function demoBundle() {
  const read = readBundle(JSON.parse(readFileSync(path.join(root, 'public/demo/bundles/gander-hill.json'), 'utf8')))
  if (!isBundle(read)) throw new Error(JSON.stringify(read))
  return read
}
const bundle = demoBundle()
const [fillSiteId, dumpSiteId, tenderId] = [bundle.plan.fillSites[0]!.id as string, bundle.plan.dumpSites[0]!.id as string, bundle.plan.tenders[0]!.tenderId as string]

let scratch: Scratch
let network: Awaited<ReturnType<typeof serveRoutes>>
let station: Awaited<ReturnType<typeof serveRoutes>>
let count = 0

/** What a server that starts anew does not have any more. */
const forgetMemory = () => { for (const name of ['millraceRooms', 'millraceActs', 'millraceActLimit'] as const) delete held[name] }

beforeAll(async () => {
  scratch = await scratchDatabase()
  held.millraceDatabase = Promise.resolve(scratch.database)
  held.millraceWaySecret = SECRET
  await createDocument(scratch.database, district('D1'))
  await createDocument(scratch.database, plan('P1', 'D1'))
  network = await serveRoutes(NETWORK)
  station = await serveRoutes(`${SECRET} station`)
})
afterAll(async () => {
  await network.stop()
  await station.stop()
  forgetMemory()
  delete held.millraceDatabase
  delete held.millraceWaySecret
  delete held.millraceJoinLimit
  await scratch.remove()
})
beforeEach(forgetMemory)

/** A new exercise with troubles to come, its clock at a moment. */
async function makeExercise(at_s: number | undefined, more: Partial<Exercise> = {}): Promise<string> {
  const id = `E${(count += 1)}`
  const exercise: Exercise = {
    format: 'millrace-exercise', version: 1, id, name: 'Night at the farm', districtId: 'D1', bundle, facts: [], notes: [],
    injects: [{ id: 'i1', title: SECRET_WORDS[0]!, told: 'Engine 11 has lost its prime', trigger: { kind: 'time', at_s: 99_000 }, change: { kind: 'fillRate', fillSiteId, rateShare: 0 } }, { id: 'i2', title: SECRET_WORDS[0]!, told: SECRET_WORDS[1]!, trigger: { kind: 'hand' }, change: { kind: 'tenderOut', tenderId } }],
    ...(at_s !== undefined && { clock: { at_s, isRunning: false, speedFactor: 10, setAt: '2026-01-01T00:00:00.000Z' } }), ...more,
  }
  await createDocument(scratch.database, exercise as unknown as EditableDocument)
  return id
}

const scopeOf = (exerciseId: string, role: SeatScope['role'], siteId?: string): SeatScope => ({ kind: 'seat', districtId: 'D1', exerciseId, role, ...(siteId !== undefined && { siteId }) })
async function sit(scope: Scope, name = 'Ann'): Promise<{ token: string; id: string; cookie: string }> {
  const { grant, token } = await makeGrant(scratch.database, { scope, name, days: 1 })
  return { token, id: grant.id, cookie: `${scope.kind === 'seat' ? SEAT_COOKIE : GRANT_COOKIE}=${token}` }
}

const address = (at: string, over = network) => `http://127.0.0.1:${over.port}${at}`
const ask = (at: string, cookie: string, method = 'GET', body?: unknown): Promise<Response> =>
  fetch(address(at), { method, headers: { cookie, ...(body !== undefined && { 'content-type': 'application/json' }) }, ...(body !== undefined && { body: JSON.stringify(body) }) })
const codeOf = async (answer: Response) => [answer.status, ((await answer.json()) as { error?: { code: string } }).error?.code]
const decide = (cookie: string, change: Change, id = crypto.randomUUID()) => ask('/api/seat/acts', cookie, 'POST', { kind: 'decide', id, change })
const exerciseOf = async (id: string) => (await getDocument(scratch.database, id)).doc as unknown as Exercise

/** Edits by who leads, at the station, over its own way. */
async function lead(exerciseId: string, ...bodies: unknown[]): Promise<void> {
  const { sequence } = await getDocument(scratch.database, exerciseId)
  const edits = bodies.map((body) => ({ id: crypto.randomUUID(), docId: exerciseId, base: sequence, by: 'lead', at: '2026-01-01T00:00:00Z', body }))
  const answer = await fetch(address(`/api/documents/${exerciseId}/edits`, station), { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify({ edits }) })
  expect(answer.status, await answer.clone().text()).toBe(200)
}

/** A seat as its page has it, with all that ever came over its stream. */
function listen(cookie: string, port = network.port) {
  const heard: { state: SeatState; events: StreamEvent[]; live: LiveState } = { state: emptySeat, events: [], live: { kind: 'catching-up' } }
  const stream = new LiveStream({
    url: `http://127.0.0.1:${port}/api/seat/live`, pauses_ms: [20, 50, 100],
    lastId: () => (heard.state.number > 0 ? idOfNumber(heard.state.number) : undefined),
    fetcher: (url, init) => fetch(url, { ...init, headers: { ...(init?.headers as Record<string, string>), cookie } }),
    onState: (live) => { heard.live = live },
    onEvent: (event) => {
      heard.events.push(event)
      const after = afterEvent(heard.state, event)
      if (!after) return false
      heard.state = after
    },
  })
  stream.start()
  return { heard, stop: () => { stream.stop() } }
}
const until = async (isSo: () => boolean | Promise<boolean>, what: string) => {
  for (const end = Date.now() + 20_000; Date.now() < end; await new Promise((resolve) => setTimeout(resolve, 20))) if (await isSo()) return
  throw new Error(`not within 20 s: ${what}`)
}

describe('a seat’s grant', () => {
  const keyOf = (route: string, exerciseId: string) => (route.includes('blobs') ? '0'.repeat(64) : route.includes('grants') ? 'G1' : route.includes('districts') ? 'D1' : exerciseId)
  const everyRule = Object.entries(RULES).flatMap(([route, rules]) => Object.entries(rules).map(([method, rule]) => [route, method, rule] as const))
  const walked = everyRule.filter(([route]) => !route.startsWith('/api/seat/') && route !== '/api/join')

  test('has rules to be walked', () => { expect(walked.length).toBeGreaterThan(10) })

  test.each(walked)('opens nothing at %s %s (%s), under its own name or a district’s, not even its own exercise', async (route, method) => {
    const exerciseId = await makeExercise(600)
    const { token } = await sit(scopeOf(exerciseId, 'waterSupply'))
    for (const cookie of [`${SEAT_COOKIE}=${token}`, `${GRANT_COOKIE}=${token}`, `${SEAT_COOKIE}=${token}; ${GRANT_COOKIE}=${token}`]) {
      for (const key of [keyOf(route, exerciseId), 'D1', 'P1']) {
        const answer = await ask(route.replace(/\[\w+\]/, key), cookie, method, method === 'GET' || method === 'DELETE' ? undefined : {})
        expect(await codeOf(answer), `${cookie.split('=')[0]} ${key}`).toEqual([401, 'join-first'])
      }
    }
  })

  test('opens its own seat, and a district’s grant opens none', async () => {
    const exerciseId = await makeExercise(600)
    const [seat, officer] = [await sit(scopeOf(exerciseId, 'attack')), await sit({ kind: 'district', districtId: 'D1' })]
    for (const cookie of [officer.cookie, `${SEAT_COOKIE}=${officer.token}`, '']) {
      for (const [at, method] of [['live', 'GET'], ['acts', 'POST'], ['map', 'GET']] as const) expect((await ask(`/api/seat/${at}`, cookie, method, method === 'POST' ? {} : undefined)).status, at).toBe(401)
    }
    // A device that has both has what each opens.
    const both = `${seat.cookie}; ${officer.cookie}`
    expect((await ask('/api/documents/D1', both)).status).toBe(200)
    expect((await decide(both, { kind: 'demand', flow_gpm: 300 })).status).toBe(201)
    expect((await fetch(address('/api/seat/live', station))).status).toBe(404)
  })

  test('opens one page', async () => {
    const { cookie, token } = await sit(scopeOf(await makeExercise(600), 'attack'))
    const open = async () => scratch.database
    const pages = ['/', '/devices', '/device', '/drill', '/district/D1/plan', '/district/D1/exercise/E1', '/demo/district.json', '/seat/more']
    for (const page of pages) for (const name of [SEAT_COOKIE, GRANT_COOKIE]) expect(pageAccess(await findViewer(new Headers({ 'x-millrace-way': NETWORK, cookie: `${name}=${token}` }), open, page), page), page).toBe('join')
    expect(pageAccess(await findViewer(new Headers({ 'x-millrace-way': NETWORK, cookie }), open, '/seat'), '/seat')).toBe('open')
    expect(pageAccess(await findViewer(new Headers({ 'x-millrace-way': NETWORK }), open, '/seat'), '/seat')).toBe('join')
  })

  test('comes by a code for a seat that there is, with a cookie of its own', async () => {
    const exerciseId = await makeExercise(600)
    const code = (scope: SeatScope) => makeJoinCode(scratch.database, { scope, uses: 1, grantDays: 1 })
    for (const wrong of [scopeOf('none', 'attack'), scopeOf('P1', 'attack'), scopeOf(exerciseId, 'dumpSite'), scopeOf(exerciseId, 'dumpSite', fillSiteId), scopeOf(exerciseId, 'attack', fillSiteId), { ...scopeOf(exerciseId, 'attack'), districtId: 'D9' }]) {
      await expect(code(wrong), JSON.stringify(wrong)).rejects.toMatchObject({ code: 'not-found' })
    }
    const made = await code(scopeOf(exerciseId, 'dumpSite', dumpSiteId))
    const answer = await ask('/api/join', '', 'POST', { code: made.code, name: 'Ann' })
    expect([answer.status, await answer.json()]).toEqual([201, { page: '/seat' }])
    const cookie = answer.headers.get('set-cookie') ?? ''
    for (const part of [`${SEAT_COOKIE}=`, 'Path=/', 'Secure', 'HttpOnly', 'SameSite=Strict']) expect(cookie).toContain(part)
    const listener = listen(cookie.split(';')[0]!)
    await until(() => listener.heard.live.kind === 'live', 'the seat is live')
    expect(listener.heard.state.info).toMatchObject({ role: 'dumpSite', siteId: dumpSiteId, exercise: 'Night at the farm' })
    listener.stop()
  })

  test('taken back ends its stream at once, and its decisions', async () => {
    const { cookie, id } = await sit(scopeOf(await makeExercise(600), 'attack'))
    const listener = listen(cookie)
    await until(() => listener.heard.live.kind === 'live', 'the seat is live')
    await revokeGrant(scratch.database, id)
    await until(() => listener.heard.live.kind === 'refused', 'the seat is closed')
    expect(listener.heard.live).toEqual({ kind: 'refused', status: 401 })
    expect((await decide(cookie, { kind: 'demand', flow_gpm: 300 })).status).toBe(401)
  })
})

describe('what is sent to a seat', () => {
  test('never holds a trouble that is to come, a title of one that came, or what another place knows', async () => {
    const exerciseId = await makeExercise(1500)
    const places = { waterSupply: scopeOf(exerciseId, 'waterSupply'), attack: scopeOf(exerciseId, 'attack'), dump: scopeOf(exerciseId, 'dumpSite', dumpSiteId), fill: scopeOf(exerciseId, 'fillSite', fillSiteId) }
    const cookies = await Promise.all(Object.values(places).map(async (scope) => (await sit(scope)).cookie))
    // Every byte of the streams, as the network has it.
    const texts = cookies.map(() => '')
    const abort = new AbortController()
    const readers = cookies.map(async (cookie, i) => {
      const { body } = await fetch(address('/api/seat/live'), { headers: { cookie }, signal: abort.signal })
      const decoder = new TextDecoder()
      for await (const piece of body as unknown as AsyncIterable<Uint8Array>) texts[i] += decoder.decode(piece, { stream: true })
    })
    await until(() => texts.every((text) => text.includes('event: now')), 'all seats are told')
    await lead(exerciseId, { kind: 'addItem', collection: 'injects', item: { id: 'i3', title: SECRET_WORDS[2], told: SECRET_WORDS[1], trigger: { kind: 'hand' }, change: { kind: 'tankTips', dumpSiteId, lostShare: 1 } } }, { kind: 'addItem', collection: 'notes', item: { id: 'n1', at_s: 1500, by: 'lead', role: 'facilitator', text: SECRET_WORDS[1] } })
    await lead(exerciseId, { kind: 'addItem', collection: 'facts', item: { id: 'i1@1500', at_s: 1500, cause: 'inject', by: '', injectId: 'i1', change: { kind: 'fillRate', fillSiteId, rateShare: 0 } } })
    await lead(exerciseId, { kind: 'setFields', set: { clock: { at_s: 1600, isRunning: false, speedFactor: 10, setAt: '2026-01-01T00:00:00.000Z' } } })
    await until(() => texts.every((text) => text.includes('"at_s":1600')), 'all seats have the clock')
    abort.abort()
    await Promise.allSettled(readers)
    for (const text of texts) for (const secret of [...SECRET_WORDS, '"injects"', 'i2', 'i3', 'usable_gal', 'needed_gpm']) expect(text, secret).not.toContain(secret)
    const told = texts.map((text) => text.includes('Engine 11 has lost its prime'))
    expect(Object.fromEntries(Object.keys(places).map((name, i) => [name, told[i]]))).toEqual({ waterSupply: false, attack: false, dump: false, fill: true })
    const answers = texts.map((text) => JSON.parse(new EventReader().read(text).findLast(({ event }) => event === 'now')!.data) as SeatAnswer)
    expect(answers.map(({ view, points }) => [view.fire !== undefined, view.engine_gal !== undefined, view.tanks.length, view.fills.length, points !== undefined])).toEqual([[true, false, 0, 0, true], [true, true, 0, 0, false], [false, false, 1, 0, false], [false, false, 0, 1, false]])
    const infos = texts.map((text) => JSON.parse(new EventReader().read(text).find(({ event }) => event === 'seat')!.data) as SeatInfo)
    expect(infos.map(({ map, choices }) => [map !== undefined, choices.tenders.length > 0])).toEqual([[true, true], [false, false], [false, false], [false, false]])
  })

  test('is the clock, the end, and that the exercise was put away', async () => {
    const exerciseId = await makeExercise(undefined)
    const listener = listen((await sit(scopeOf(exerciseId, 'attack'))).cookie)
    await until(() => listener.heard.live.kind === 'live', 'the seat is live')
    expect(listener.heard.state.clock).toBeUndefined()
    const setAt = new Date().toISOString()
    await lead(exerciseId, { kind: 'setFields', set: { clock: { at_s: 900, isRunning: true, speedFactor: 60, setAt } } })
    await until(() => (listener.heard.state.answer?.clock_s ?? 0) > 930, 'the clock runs')
    expect(listener.heard.state.clock).toEqual({ at_s: 900, isRunning: true, speedFactor: 60, setAt })
    await lead(exerciseId, { kind: 'setFields', set: { endedAt_s: 1200 } })
    await until(() => listener.heard.state.answer?.clock_s === 1200, 'it has ended')
    expect(listener.heard.state.endedAt_s).toBe(1200)
    await softDelete(scratch.database, exerciseId)
    await until(() => listener.heard.state.isGone, 'it is gone')
    listener.stop()
  })
})

describe('a stream taken up again', () => {
  /** The stream's events up to the point where all so far was told, asked for after a number. */
  async function heardAfter(cookie: string, lastId?: string): Promise<StreamEvent[]> {
    const abort = new AbortController()
    const { body } = await fetch(address('/api/seat/live'), { headers: { cookie, ...(lastId !== undefined && { 'last-event-id': lastId }) }, signal: abort.signal })
    const [reader, decoder, events] = [new EventReader(), new TextDecoder(), [] as StreamEvent[]]
    for await (const piece of body as unknown as AsyncIterable<Uint8Array>) {
      events.push(...reader.read(decoder.decode(piece, { stream: true })))
      if (events.some(({ event }) => event === 'ready')) break
    }
    abort.abort()
    return events
  }

  test('tells what an act has read before the room looked, and nothing where nothing is new', async () => {
    const exerciseId = await makeExercise(900)
    const scope = scopeOf(exerciseId, 'attack')
    const { grant } = await makeGrant(scratch.database, { scope, name: 'Ann', days: 1 })
    const room = new Room(exerciseId, () => Promise.resolve(scratch.database))
    const told: string[] = []
    const stop = onChanged(`document:${exerciseId}`, () => void room.current())
    const leave = await room.join({ ...grant, scope }, { send: ({ event }) => { told.push(event) }, close: () => undefined }, 0)
    const begun = told.length
    await lead(exerciseId, { kind: 'addItem', collection: 'facts', item: { id: 'f1', at_s: 900, cause: 'decision', by: 'Lead', change: { kind: 'demand', flow_gpm: 300 } } })
    await room.current()
    expect(told.slice(begun)).toContain('news')
    const after = told.length
    await room.look()
    expect(told).toHaveLength(after)
    leave()
    stop()
  })

  test('goes on after the number it is asked for, and begins anew for one that this station never gave', async () => {
    const exerciseId = await makeExercise(900)
    const { cookie } = await sit(scopeOf(exerciseId, 'attack'))
    for (const flow_gpm of [300, 400]) expect((await decide(cookie, { kind: 'demand', flow_gpm })).status).toBe(201)
    const numbersAfter = async (lastId?: string) => {
      const events = await heardAfter(cookie, lastId)
      return [JSON.parse(events.find(({ event }) => event === 'begin')!.data), ...events.flatMap(({ event, id }) => (event === 'news' ? [numberOfId(id)] : []))] as unknown[]
    }
    const all = [{ after: 0 }, 1, 2, 3]
    expect(await numbersAfter()).toEqual(all)
    expect(await numbersAfter(idOfNumber(2))).toEqual([{ after: 2 }, 3])
    expect(await numbersAfter(idOfNumber(3))).toEqual([{ after: 3 }])
    // After a backup was put back, a device may know more than the station; and news may be numbered by other rules.
    for (const other of [idOfNumber(999), '2.1', 'x', '-1']) expect(await numbersAfter(other), other).toEqual(all)
  })

  test('is had four times by one device, and not a fifth time', async () => {
    const { cookie } = await sit(scopeOf(await makeExercise(900), 'attack'))
    const listeners = Array.from({ length: 4 }, () => listen(cookie))
    await until(() => listeners.every(({ heard }) => heard.live.kind === 'live'), 'four are live')
    expect(await codeOf(await ask('/api/seat/live', cookie))).toEqual([429, 'seat-too-often'])
    listeners[0]!.stop()
    await until(async () => {
      const abort = new AbortController()
      const { status } = await fetch(address('/api/seat/live'), { headers: { cookie }, signal: abort.signal })
      abort.abort()
      return status === 200
    }, 'there is room again')
    for (const { stop } of listeners) stop()
  })
})

describe('what a seat decides', () => {
  test('stands in the exercise with its time, post and name, once however often it is sent', async () => {
    const exerciseId = await makeExercise(1500)
    const { cookie, id: grantId } = await sit(scopeOf(exerciseId, 'attack'), 'R. Moss')
    const id = crypto.randomUUID()
    const answers = await Promise.all([1, 2, 3].map(() => decide(cookie, { kind: 'demand', flow_gpm: 300 }, id)))
    for (const answer of answers) expect([answer.status, await answer.json()]).toEqual([201, { at_s: 1500 }])
    await lead(exerciseId, { kind: 'setFields', set: { clock: { at_s: 1800, isRunning: false, speedFactor: 10, setAt: '2026-01-01T00:00:00.000Z' } } })
    forgetMemory()
    expect(await (await decide(cookie, { kind: 'demand', flow_gpm: 300 }, id)).json()).toEqual({ at_s: 1500 })
    expect((await exerciseOf(exerciseId)).facts).toEqual([{ id: `${grantId.slice(0, 8)}-${id}`, at_s: 1500, cause: 'decision', by: 'Attack: R. Moss', change: { kind: 'demand', flow_gpm: 300 } }])
  })

  test('is taken in the order in which it comes in', async () => {
    const exerciseId = await makeExercise(1500)
    const seats = await Promise.all(Array.from({ length: 8 }, (_, i) => sit(scopeOf(exerciseId, 'attack'), `Ann ${i}`)))
    await Promise.all(seats.map(({ cookie }, i) => decide(cookie, { kind: 'demand', flow_gpm: 100 + i })))
    const { facts } = await exerciseOf(exerciseId)
    const { sequence } = await getDocument(scratch.database, exerciseId)
    expect([facts.length, sequence, new Set(facts.map(({ change }) => JSON.stringify(change))).size]).toEqual([8, 8, 8])
  })

  test('is refused in words where it is not its own, cannot be, or nothing runs; and nothing is written then', async () => {
    const exerciseId = await makeExercise(1500)
    const [attack, supply, dump] = await Promise.all([sit(scopeOf(exerciseId, 'attack')), sit(scopeOf(exerciseId, 'waterSupply')), sit(scopeOf(exerciseId, 'dumpSite', dumpSiteId))])
    expect(await codeOf(await decide(attack.cookie, { kind: 'tenderOut', tenderId }))).toEqual([403, 'seat-not-yours'])
    expect(await codeOf(await decide(dump.cookie, { kind: 'fillRate', fillSiteId, rateShare: 1 }))).toEqual([403, 'seat-not-yours'])
    // A leak that is not there cannot be mended.
    expect(await codeOf(await decide(dump.cookie, { kind: 'tankLeak', dumpSiteId, leak_gpm: 0 }))).toEqual([409, 'seat-in-order'])
    expect(await codeOf(await decide(supply.cookie, { kind: 'tankTips', dumpSiteId, lostShare: 1 }))).toEqual([403, 'seat-not-yours'])
    expect(await codeOf(await decide(supply.cookie, { kind: 'plan', edits: [{ doc: 'district', body: { kind: 'setFields', set: { name: 'x' } } }] }))).toEqual([403, 'seat-not-yours'])
    expect(await codeOf(await decide(supply.cookie, { kind: 'tenderOut', tenderId: 'nobody' }))).toEqual([422, 'exercise-names-nothing'])
    for (const broken of [{ kind: 'decide', id: 'x', change: {} }, { kind: 'note', id: crypto.randomUUID(), text: '' }, { kind: 'note', id: crypto.randomUUID(), text: 'x', role: 'facilitator' }]) expect((await ask('/api/seat/acts', attack.cookie, 'POST', broken)).status).toBe(422)
    await lead(exerciseId, { kind: 'setFields', set: { endedAt_s: 1500 } })
    expect(await codeOf(await decide(attack.cookie, { kind: 'demand', flow_gpm: 300 }))).toEqual([409, 'exercise-over'])
    expect((await exerciseOf(exerciseId)).facts).toEqual([])
    const unbegun = await sit(scopeOf(await makeExercise(undefined), 'attack'))
    expect(await codeOf(await decide(unbegun.cookie, { kind: 'demand', flow_gpm: 300 }))).toEqual([409, 'exercise-not-begun'])
  })

  test('beyond what a person decides in a minute waits', async () => {
    const { cookie } = await sit(scopeOf(await makeExercise(1500), 'attack'))
    const statuses: number[] = []
    for (let i = 0; i < 32; i++) statuses.push((await ask('/api/seat/acts', cookie, 'POST', { kind: 'note', id: crypto.randomUUID(), text: `note ${i}` })).status)
    expect(statuses).toEqual([...Array.from({ length: 30 }, () => 201), 429, 429])
  })
})

test('thirty seats on one server lose no event and hear none twice, over broken connections and a restart', async () => {
  const exerciseId = await makeExercise(1200)
  const scopes = [scopeOf(exerciseId, 'waterSupply'), scopeOf(exerciseId, 'attack'), scopeOf(exerciseId, 'dumpSite', dumpSiteId), scopeOf(exerciseId, 'fillSite', fillSiteId)]
  const seats = await Promise.all(Array.from({ length: 30 }, async (_, i) => ({ scope: scopes[i % scopes.length]!, name: `Crew ${i}`, ...(await sit(scopes[i % scopes.length]!, `Crew ${i}`)) })))
  let server = await serveRoutes(NETWORK)
  const { port } = server
  const listeners = seats.map(({ cookie }) => listen(cookie, port))
  await until(() => listeners.every(({ heard }) => heard.live.kind === 'live'), 'thirty seats are live')

  await lead(exerciseId, { kind: 'setFields', set: { clock: { at_s: 1200, isRunning: true, speedFactor: 2, setAt: new Date().toISOString() } } })
  // Each seat notes three things, sent until it has an answer: some are sent twice, some into the restart.
  const notes = seats.map(async ({ cookie }, i) => {
    for (let n = 0; n < 3; n++) {
      const id = crypto.randomUUID()
      const send = () => fetch(`http://127.0.0.1:${port}/api/seat/acts`, { method: 'POST', headers: { cookie, 'content-type': 'application/json' }, body: JSON.stringify({ kind: 'note', id, text: `${i} ${n}` }) }).then(({ status }) => status, () => 0)
      await until(async () => (await send()) === 201, `note ${i} ${n}`)
      if (i % 5 === 0) await until(async () => (await send()) === 201, `note ${i} ${n} again`)
      await new Promise((resolve) => setTimeout(resolve, 100 + 15 * i))
    }
  })
  const changes: readonly Change[] = [{ kind: 'demand', flow_gpm: 400 }, { kind: 'fillRate', fillSiteId, rateShare: 0.5 }, { kind: 'tankLeak', dumpSiteId, leak_gpm: 50 }, { kind: 'moreDemand', add_gpm: 10 }, { kind: 'fillRate', fillSiteId, rateShare: 1 }, { kind: 'tankLeak', dumpSiteId, leak_gpm: 0 }]
  for (let n = 0; n < 48; n++) {
    await lead(exerciseId, { kind: 'addItem', collection: 'facts', item: { id: `fact-${n}`, at_s: 1200 + n, cause: n % 2 ? 'decision' : 'inject', by: '', change: changes[n % changes.length] } })
    if (n % 12 === 5) await lead(exerciseId, { kind: 'removeItem', collection: 'facts', id: `fact-${n}` })
    // The network breaks for everybody; later the server itself is started again.
    const breaks = [16, 28, 40].indexOf(n) + 1
    if (breaks > 0) await until(() => listeners.every(({ heard }) => heard.events.filter(({ event }) => event === 'begin').length > breaks), 'all are back')
    if (n === 12 || n === 36) server.server.closeAllConnections()
    if (n === 24) {
      await server.stop()
      forgetMemory()
      await lead(exerciseId, { kind: 'addItem', collection: 'facts', item: { id: 'while-away', at_s: 1224.5, cause: 'inject', by: '', change: { kind: 'moreDemand', add_gpm: 1 } } })
      server = await serveRoutes(NETWORK, port)
    }
  }
  await Promise.all(notes)
  await lead(exerciseId, { kind: 'setFields', set: { endedAt_s: 2000 } })
  await until(() => listeners.every(({ heard }) => heard.live.kind === 'live' && heard.state.endedAt_s === 2000), 'thirty seats hear of the end')

  const running = (await readRunning(scratch.database, exerciseId))!
  expect(running.exercise.notes.length).toBe(90)
  expect(running.exercise.facts.length).toBe(48 + 1 - 4)
  listeners.forEach(({ heard }, i) => {
    const { scope, name } = seats[i]!
    const by = personAt({ scope, name }, siteNameOf(running, scope.siteId))
    const due = running.happenings.flatMap((one) => newsFor(one, scope, by, () => undefined) ?? [])
    const news = heard.events.filter(({ event }) => event === 'news')
    expect(heard.events.find(({ event }) => event === 'begin' || event === 'news')?.event, name).toBe('begin')
    expect(news.map(({ id }) => numberOfId(id)), name).toEqual(due.map((_, n) => n + 1))
    expect(news.map(({ data }) => JSON.parse(data) as unknown), name).toEqual(due)
    expect(heard.events.filter(({ event }) => event === 'begin').length, name).toBeGreaterThanOrEqual(4)
    expect(heard.state.notes.length, name).toBe(3)
    expect(heard.state.answer?.clock_s, name).toBe(2000)
  })
  for (const { stop } of listeners) stop()
  await server.stop()
})
