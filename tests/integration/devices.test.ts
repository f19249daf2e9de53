import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { afterAll, afterEach, beforeAll, describe, expect, test, vi } from 'vitest'
import { putBlob } from '@/app/_server/blobs'
import { RULES, ruleOf, type Rule } from '@/app/_server/devices/access'
import { findGrant, GRANT_COOKIE, listGrants, makeGrant, restoreGrant, revokeGrant } from '@/app/_server/devices/grants'
import { CODE_LETTERS, joinByCode, joinLimit, makeJoinCode, plainCode } from '@/app/_server/devices/join-codes'
import { pageAccess } from '@/app/_server/devices/page-access'
import { RateLimit } from '@/app/_server/devices/rate-limit'
import { mayEdit, type Scope } from '@/app/_devices/scope'
import { findViewer } from '@/app/_server/devices/viewer'
import { wayOf } from '@/app/_server/devices/way'
import { createDocument, getDocument } from '@/app/_server/documents'
import { appendEdits } from '@/app/_server/edits'
import { keptAddress, pages } from '@/app/_shell/pages'
import { district, edit, plan, rename } from './support/documents'
import { root, scratchDatabase, type Scratch } from './support/scratch-database'

const held = globalThis as typeof globalThis & { millraceDatabase?: unknown; millraceWaySecret?: string; millraceJoinLimit?: unknown }
const SECRET = 's'.repeat(64)
const STATION = { 'x-millrace-way': `${SECRET} station` }
const NETWORK = { 'x-millrace-way': `${SECRET} network 192.168.1.20` }
const HASH_OF = { own: '', other: '', loose: '' }

let scratch: Scratch
beforeAll(async () => {
  scratch = await scratchDatabase()
  // What the server puts there, so that the routes find this test's database and listener.
  held.millraceDatabase = Promise.resolve(scratch.database)
  held.millraceWaySecret = SECRET
  for (const [name, text] of [['own', 'ours'], ['other', 'theirs'], ['loose', 'nobody’s']] as const) {
    const bytes = new TextEncoder().encode(text)
    HASH_OF[name] = createHash('sha256').update(bytes).digest('hex')
    await putBlob(scratch.database, HASH_OF[name], 'roads', bytes)
  }
  const roads = (hash: string) => ({ hash, name: 'r', attribution: 'a', importedOn: '2026-01-01' })
  await createDocument(scratch.database, { ...district('D1'), roads: roads(HASH_OF.own) })
  await createDocument(scratch.database, { ...district('D2'), roads: roads(HASH_OF.other) })
  await createDocument(scratch.database, plan('P1', 'D1'))
  await createDocument(scratch.database, plan('P2', 'D2'))
})
afterAll(async () => {
  delete held.millraceDatabase
  delete held.millraceWaySecret
  delete held.millraceJoinLimit
  await scratch.remove()
})
afterEach(() => vi.unstubAllEnvs())

const grantFor = async (scope: Scope): Promise<Record<string, string>> => {
  const { token } = await makeGrant(scratch.database, { scope, name: 'Engine 2 tablet', days: 1 })
  return { ...NETWORK, cookie: `${GRANT_COOKIE}=${token}` }
}

type Handler = (request: Request, context: { params: Promise<Record<string, string>> }) => Promise<Response>

/** Every handler of the API as the framework would call it. */
const routeFiles = (readdirSync(path.join(root, 'app/api'), { recursive: true }) as string[]).filter((file) => path.basename(file) === 'route.ts').map((file) => file.split(path.sep).join('/'))
const routeOf = (file: string) => `/api/${file.replace(/\/route\.ts$/, '')}`

async function call(route: string, method: string, headers: Record<string, string>, { key = '', query = '', body, type = 'application/json' }: { key?: string; query?: string; body?: BodyInit; type?: string } = {}): Promise<Response> {
  const loaded = (await import(/* @vite-ignore */ path.join(root, 'app/api', route.slice('/api/'.length), 'route.ts'))) as Record<string, Handler>
  const handler = loaded[method]
  if (!handler) throw new Error(`${route} has no ${method}`)
  const name = /\[(\w+)\]/.exec(route)?.[1]
  const url = `http://localhost${route.replace(/\[\w+\]/, encodeURIComponent(key))}${query}`
  return handler(new Request(url, { method, headers: { host: 'localhost', 'content-type': type, ...headers }, ...(body !== undefined && { body }) }), { params: Promise.resolve(name ? { [name]: key } : {}) })
}

const methodsIn = (file: string): string[] => [...readFileSync(path.join(root, 'app/api', file), 'utf8').matchAll(/export (?:const|async function|function) (GET|HEAD|POST|PUT|PATCH|DELETE)\b/g)].map(([, method = '']) => method)

describe('every part of the API', () => {
  test('has its rule, stands behind the door, and no rule is left over', () => {
    expect(routeFiles.length).toBeGreaterThan(5)
    const found = Object.fromEntries(routeFiles.map((file) => [routeOf(file), methodsIn(file).sort()]))
    expect(Object.fromEntries(Object.entries(RULES).map(([route, rules]) => [route, Object.keys(rules).sort()]))).toEqual(found)
    for (const file of routeFiles) expect(readFileSync(path.join(root, 'app/api', file), 'utf8'), file).toMatch(/door[<(]/)
  })

  test('that has no rule is for the station alone', () => {
    expect(ruleOf('GET', '/api/new-thing')).toEqual({ rule: 'station', key: '' })
    expect(ruleOf('PATCH', '/api/documents/D1').rule).toBe('station')
    expect(ruleOf('HEAD', '/api/documents/D1')).toEqual({ rule: 'read-document', key: 'D1' })
    expect(ruleOf('GET', '/api/documents/D1/edits/more').rule).toBe('station')
  })

  const everyRule = Object.entries(RULES).flatMap(([route, rules]) => Object.entries(rules).map(([method, rule]) => [route, method, rule] as const))
  const keyOf = (route: string, own: boolean) => (route.includes('blobs') ? (own ? HASH_OF.own : HASH_OF.other) : route.includes('grants') ? 'G1' : own ? 'P1' : 'P2')
  const refused = [401, 403, 404]

  test.each(everyRule)('%s %s (%s) is closed to a device that has not joined, and to a forged, ended or other grant', async (route, method, rule: Rule) => {
    if (rule === 'anyone') return
    const strangers: Record<string, Record<string, string>> = {
      'no grant': NETWORK,
      'a made-up token': { ...NETWORK, cookie: `${GRANT_COOKIE}=${'A'.repeat(43)}` },
      'a forged way': { 'x-millrace-way': 'station' },
      'a forged way with a guess': { 'x-millrace-way': `${'0'.repeat(64)} station` },
      'no way at all': {},
    }
    for (const [who, headers] of Object.entries(strangers)) {
      const answer = await call(route, method, headers, { key: keyOf(route, true), body: method === 'GET' || method === 'DELETE' ? undefined : '{}' })
      expect(answer.status, who).toBe(401)
      expect(await answer.json(), who).toMatchObject({ error: { code: 'join-first' } })
    }
    if (rule === 'holder') return
    // A grant of D1 asks for what is of D2.
    for (const scope of [{ kind: 'district', districtId: 'D1' }, { kind: 'read-district', districtId: 'D1' }] as const) {
      if (rule === 'create' || (rule === 'add-data' && mayEdit(scope))) continue
      const answer = await call(route, method, await grantFor(scope), { key: keyOf(route, false), body: method === 'GET' || method === 'DELETE' ? undefined : '{}', query: method === 'PUT' ? '?kind=roads' : '' })
      expect(refused, `${scope.kind}: ${answer.status}`).toContain(answer.status)
      expect(JSON.stringify(await answer.json())).not.toContain('theirs')
    }
  })

  test.each(everyRule.filter(([, , rule]) => ['edit-document', 'edit-plan', 'add-data', 'create'].includes(rule)))('%s %s (%s) is closed to a device that may only look', async (route, method) => {
    const answer = await call(route, method, await grantFor({ kind: 'read-district', districtId: 'D1' }), { key: keyOf(route, true), body: method === 'DELETE' ? undefined : '{}' })
    expect([answer.status, ((await answer.json()) as { error: { code: string } }).error.code]).toEqual([403, 'read-only'])
  })

  test.each(everyRule.filter(([, , rule]) => rule === 'station'))('%s %s is never served over the network', async (route, method) => {
    for (const kind of ['district', 'read-district'] as const) {
      const answer = await call(route, method, await grantFor({ kind, districtId: 'D1' }), { key: 'D1', body: method === 'GET' || method === 'DELETE' ? undefined : '{}' })
      expect(answer.status).toBe(403)
    }
  })
})

describe('a device that joined for a district', () => {
  test('finds it and its plans in the list, and nothing else', async () => {
    for (const kind of ['district', 'read-district'] as const) {
      const headers = await grantFor({ kind, districtId: 'D1' })
      for (const query of ['', '?withDeleted=1', '?districtId=D2', '?kind=district']) {
        const { documents } = (await (await call('/api/documents', 'GET', headers, { query })).json()) as { documents: { id: string }[] }
        expect(documents.every(({ id }) => ['D1', 'P1', 'P3'].includes(id)), query).toBe(true)
      }
      const { documents } = (await (await call('/api/documents', 'GET', headers)).json()) as { documents: { id: string }[] }
      expect(documents.map(({ id }) => id)).toEqual(expect.arrayContaining(['D1', 'P1']))
    }
  })

  test('reads its documents, history and data; those of another are as if they were not', async () => {
    const headers = await grantFor({ kind: 'read-district', districtId: 'D1' })
    for (const key of ['D1', 'P1']) {
      expect((await call('/api/documents/[id]', 'GET', headers, { key })).status).toBe(200)
      expect((await call('/api/documents/[id]/edits', 'GET', headers, { key })).status).toBe(200)
    }
    expect((await call('/api/blobs/[hash]', 'GET', headers, { key: HASH_OF.own })).status).toBe(200)
    const [other, none] = await Promise.all([HASH_OF.other, '0'.repeat(64)].map((key) => call('/api/blobs/[hash]', 'GET', headers, { key })))
    expect([other!.status, await other!.json()]).toEqual([none!.status, await none!.json()])
    const [theirs, missing] = await Promise.all(['P2', 'none'].map((key) => call('/api/documents/[id]', 'GET', headers, { key })))
    expect([theirs!.status, await theirs!.json()]).toEqual([missing!.status, await missing!.json()])
    expect((await call('/api/blobs/[hash]', 'GET', headers, { key: HASH_OF.loose })).status).toBe(404)
  })

  test('may, with the right to edit, change it and its plans, bring plans in, delete and restore them; nothing beyond', async () => {
    const headers = await grantFor({ kind: 'district', districtId: 'D1' })
    const post = (route: string, key: string, value: unknown) => call(route, 'POST', headers, { key, body: JSON.stringify(value) })
    expect((await post('/api/documents/[id]/edits', 'D1', { edits: [edit('dev-one', 0, rename('Changed on a phone'))] })).status).toBe(200)
    expect((await post('/api/documents', '', { doc: plan('P3', 'D1') })).status).toBe(201)
    expect((await call('/api/documents/[id]', 'DELETE', headers, { key: 'P3' })).status).toBe(204)
    expect((await post('/api/documents/[id]/restore', 'P3', undefined)).status).toBe(204)
    const bytes = new TextEncoder().encode('new roads')
    expect((await call('/api/blobs/[hash]', 'PUT', headers, { key: createHash('sha256').update(bytes).digest('hex'), query: '?kind=roads', body: bytes, type: 'application/octet-stream' })).status).toBe(204)

    expect((await post('/api/documents', '', { doc: plan('P4', 'D2') })).status).toBe(403)
    expect((await post('/api/documents', '', { doc: district('D3') })).status).toBe(403)
    expect((await call('/api/documents/[id]', 'DELETE', headers, { key: 'D1' })).status).toBe(403)
    expect((await post('/api/documents/[id]/restore', 'D1', undefined)).status).toBe(403)
    expect((await post('/api/documents/[id]/edits', 'P2', { edits: [edit('dev-two', 0, rename('Theirs'), 'P2')] })).status).toBe(404)
    // An edit sent to its own plan cannot reach another, nor move the plan away.
    expect((await post('/api/documents/[id]/edits', 'P1', { edits: [edit('dev-three', 0, rename('Theirs'), 'P2')] })).status).toBe(422)
    expect((await post('/api/documents/[id]/edits', 'P1', { edits: [edit('dev-four', 0, { kind: 'setFields', set: { districtId: 'D2' } }, 'P1')] })).status).toBe(422)
    expect((await getDocument(scratch.database, 'P2')).doc.name).toBe('Barn')
    // A path spelled another way is still the same document.
    expect((await call('/api/documents/[id]', 'GET', headers, { key: '../P2' })).status).toBe(404)
  })

  test('is out the moment its grant is taken back, or ends', async () => {
    const { grant, token } = await makeGrant(scratch.database, { scope: { kind: 'district', districtId: 'D1' }, name: 'Lost phone', days: 1 })
    const cookie = `other=1; ${GRANT_COOKIE}=${token}`
    expect(await findGrant(scratch.database, cookie)).toMatchObject({ id: grant.id })
    expect(await findGrant(scratch.database, cookie, new Date(Date.parse(grant.expiresAt) - 1))).toBeDefined()
    expect(await findGrant(scratch.database, cookie, new Date(grant.expiresAt))).toBeUndefined()
    expect((await listGrants(scratch.database)).map(({ id }) => id)).toContain(grant.id)
    await revokeGrant(scratch.database, grant.id)
    expect((await call('/api/documents', 'GET', { ...NETWORK, cookie })).status).toBe(401)
    expect((await listGrants(scratch.database)).map(({ id }) => id)).not.toContain(grant.id)
    await expect(revokeGrant(scratch.database, grant.id)).rejects.toMatchObject({ code: 'not-found' })
  })

  test('that was taken back by mistake is given back to the same device, and to it alone', async () => {
    const { grant, token } = await makeGrant(scratch.database, { scope: { kind: 'district', districtId: 'D1' }, name: 'Engine 2 tablet', days: 1 })
    const cookie = `${GRANT_COOKIE}=${token}`
    await expect(restoreGrant(scratch.database, grant.id)).rejects.toMatchObject({ code: 'not-found' })
    await revokeGrant(scratch.database, grant.id)
    // At its end it has ended, taken back or not.
    await expect(restoreGrant(scratch.database, grant.id, new Date(grant.expiresAt))).rejects.toMatchObject({ code: 'not-found' })
    expect(await findGrant(scratch.database, cookie)).toBeUndefined()
    await restoreGrant(scratch.database, grant.id)
    expect(await findGrant(scratch.database, cookie)).toMatchObject({ id: grant.id })
    expect((await call('/api/documents', 'GET', { ...NETWORK, cookie })).status).toBe(200)
  })

  test('leaves nothing in the database that would let anyone else in', async () => {
    const { token } = await makeGrant(scratch.database, { scope: { kind: 'district', districtId: 'D1' }, name: 'x', days: 1 })
    expect(Buffer.from(token, 'base64url')).toHaveLength(32)
    const { code } = await makeJoinCode(scratch.database, { scope: { kind: 'district', districtId: 'D1' }, uses: 1, grantDays: 1 })
    const rows = JSON.stringify([await scratch.database.deviceGrant.findMany(), await scratch.database.joinCode.findMany()])
    expect(rows).not.toContain(token)
    expect(rows).not.toContain(plainCode(code))
  })
})

describe('joining', () => {
  const scope = { kind: 'read-district', districtId: 'D1' } as const
  const ask = { scope, uses: 1, grantDays: 30 }
  const join = (code: string, limit = joinLimit(), now?: Date, who = '192.168.1.20') => joinByCode(scratch.database, { code, name: 'Phone', who }, limit, now)

  test('takes the code as it is shown, in small letters, with or without its dash; once only', async () => {
    for (const spell of [(code: string) => code, (code: string) => code.toLowerCase(), (code: string) => code.replace('-', ' '), plainCode]) {
      const { code } = await makeJoinCode(scratch.database, ask)
      expect(code).toMatch(new RegExp(`^[${CODE_LETTERS}]{4}-[${CODE_LETTERS}]{4}$`))
      const { grant } = await join(spell(code))
      expect(grant).toMatchObject({ scope, name: 'Phone' })
      await expect(join(code)).rejects.toMatchObject({ code: 'join-wrong-code', status: 403 })
    }
  })

  test('with a code for several lets in so many, and opens what its code opens', async () => {
    const { code } = await makeJoinCode(scratch.database, { ...ask, uses: 3 })
    for (let device = 0; device < 3; device += 1) expect((await join(code)).grant.scope).toEqual(scope)
    await expect(join(code)).rejects.toMatchObject({ code: 'join-wrong-code' })
  })

  test('ends with its code, after a quarter of an hour', async () => {
    const now = new Date()
    const { code } = await makeJoinCode(scratch.database, ask, now)
    await expect(join(code, joinLimit(), new Date(now.getTime() + 15 * 60_000))).rejects.toMatchObject({ code: 'join-wrong-code' })
    await expect(join(code, joinLimit(), new Date(now.getTime() + 15 * 60_000 - 1))).resolves.toBeDefined()
  })

  test('is for a district that is here', async () => {
    await expect(makeJoinCode(scratch.database, { ...ask, scope: { kind: 'district', districtId: 'none' } })).rejects.toMatchObject({ code: 'not-found' })
    await expect(makeJoinCode(scratch.database, { ...ask, scope: { kind: 'district', districtId: 'P1' } })).rejects.toMatchObject({ code: 'not-found' })
  })

  test('of one address is refused after ten wrong codes, even with the right one, until the window has passed; others still may', async () => {
    let clock = 0
    const limit = joinLimit(() => clock)
    for (let tries = 0; tries < 10; tries += 1) await expect(join('AAAA-AAAA', limit)).rejects.toMatchObject({ code: 'join-wrong-code' })
    const { code } = await makeJoinCode(scratch.database, { ...ask, uses: 2 })
    await expect(join(code, limit)).rejects.toMatchObject({ code: 'join-too-often', status: 429 })
    await expect(join(code, limit, undefined, '192.168.1.21')).resolves.toBeDefined()
    clock = 15 * 60_000 + 1
    await expect(join(code, limit)).resolves.toBeDefined()
  })

  test('of all together is refused after sixty tries, from however many addresses', () => {
    let clock = 0
    const limit = new RateLimit(10, 60, 1000, () => clock)
    for (let tries = 0; tries < 60; tries += 1) expect(limit.take(`10.0.0.${tries}`)).toBe(true)
    expect(limit.take('10.0.1.1')).toBe(false)
    clock = 1001
    expect(limit.take('10.0.1.1')).toBe(true)
  })

  test('by the route sets a cookie that no page and no other site can use, and counts tries', async () => {
    held.millraceJoinLimit = joinLimit()
    const { code } = await makeJoinCode(scratch.database, ask)
    const answer = await call('/api/join', 'POST', NETWORK, { body: JSON.stringify({ code, name: 'Phone' }) })
    expect([answer.status, await answer.json()]).toEqual([201, { page: '/district/D1/plan' }])
    const cookie = answer.headers.get('set-cookie') ?? ''
    for (const part of ['Path=/', 'Secure', 'HttpOnly', 'SameSite=Strict', 'Expires=']) expect(cookie).toContain(part)
    expect(cookie).not.toContain('Domain')
    const list = await call('/api/documents', 'GET', { ...NETWORK, cookie: cookie.split(';')[0]! })
    expect(list.status).toBe(200)
    const statuses = []
    for (let tries = 0; tries < 12; tries += 1) statuses.push((await call('/api/join', 'POST', NETWORK, { body: JSON.stringify({ code: 'AAAA-AAAA', name: 'Phone' }) })).status)
    expect(statuses).toEqual([...Array.from({ length: 10 }, () => 403), 429, 429])
    const crossSite = await call('/api/join', 'POST', { ...NETWORK, 'sec-fetch-site': 'cross-site' }, { body: JSON.stringify({ code, name: 'Phone' }) })
    expect(crossSite.status).toBe(403)
  })
})

describe('the way a request came', () => {
  test('is the station’s only with the secret of this process', () => {
    expect(wayOf(new Headers(STATION))).toEqual({ kind: 'station' })
    expect(wayOf(new Headers(NETWORK))).toEqual({ kind: 'network', address: '192.168.1.20' })
    for (const given of ['', 'station', `${SECRET}`, `${SECRET} `, `${SECRET}x station`, ` station`, `${SECRET} station2`]) expect(wayOf(new Headers({ 'x-millrace-way': given })).kind, given).toBe('network')
    expect(wayOf(new Headers()).kind).toBe('network')
  })

  test('without a secret is the network’s where one was promised', () => {
    delete held.millraceWaySecret
    try {
      expect(wayOf(new Headers()).kind).toBe('station')
      vi.stubEnv('MILLRACE_SERVED', '1')
      expect(wayOf(new Headers()).kind).toBe('network')
      expect(wayOf(new Headers({ 'x-millrace-way': 'undefined station' })).kind).toBe('network')
    } finally {
      held.millraceWaySecret = SECRET
    }
  })

  test('the station needs no grant', async () => {
    expect((await call('/api/documents', 'GET', STATION)).status).toBe(200)
    expect((await appendEdits(scratch.database, 'D2', [edit('station', 0, rename('Two'), 'D2')])).sequence).toBe(1)
  })
})

describe('pages over the network', () => {
  const deviceOf = async (districtId: string) => findViewer(new Headers(await grantFor({ kind: 'district', districtId })), async () => scratch.database)

  test('without a grant are the page to join at and the files it needs', () => {
    for (const path of ['/join', '/_next/static/chunks/a.js', '/icon.svg', '/sw.js', '/manifest.webmanifest']) expect(pageAccess({ kind: 'nobody' }, path), path).toBe('open')
    for (const path of ['/', '/devices', '/district/D1/plan', '/drill', '/demo/bundles/x.json', '/schemas/bundle.schema.json', '/join/more', '/_next/image', '/_next/staticx']) expect(pageAccess({ kind: 'nobody' }, path), path).toBe('join')
  })

  test('with one are those of its district', async () => {
    const viewer = await deviceOf('D1')
    for (const path of ['/', '/device', '/drill', '/join', '/district/D1', '/district/D1/plan/P1/doubt']) expect(pageAccess(viewer, path), path).toBe('open')
    for (const path of ['/devices', '/district/D2/plan', '/district/D11/plan', '/district/D1%2F..%2FD2/plan', '/demo/map.pbf', '/district/']) expect(pageAccess(viewer, path), path).toBe('closed')
  })

  test('with one are the copies that a device keeps of every page, or it would keep none', async () => {
    const viewer = await deviceOf('D1')
    for (const page of pages) expect(pageAccess(viewer, keptAddress(page)), page).toBe('open')
  })

  test('to the station are all', () => {
    for (const path of ['/', '/devices', '/district/D2/plan']) expect(pageAccess({ kind: 'station' }, path)).toBe('open')
  })
})
