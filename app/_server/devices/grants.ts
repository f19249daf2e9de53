import { createHash, randomBytes, randomUUID } from 'node:crypto'
import type { Grant } from '../../_devices/devices'
import { scopeSchema, type DistrictScope, type Scope, type SeatScope } from '../../_devices/scope'
import type { Database } from '../open-database'
import { refusal } from '../refusal'
import { tellChanged } from '../live/changes'

/** `__Host-`: browsers take it only over HTTPS, for this host alone and all of it. */
export const GRANT_COOKIE = '__Host-millrace-device'
/** A seat's grant has a cookie of its own: a tablet that knows a district can sit down in an exercise and still knows it afterwards. */
export const SEAT_COOKIE = '__Host-millrace-seat'

const DAY_ms = 24 * 60 * 60 * 1000
const TOKEN = /^[A-Za-z0-9_-]{43}$/
/** How old what is known of the last request may be: not every one is worth a write. */
const SEEN_EVERY_ms = 60_000

export type MadeGrant = { grant: Grant; token: string }

type Row = { id: string; scope: string; name: string; createdAt: Date; expiresAt: Date; lastSeenAt: Date }

const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex')

const grantOf = ({ id, scope, name, createdAt, expiresAt, lastSeenAt }: Row): Grant => ({
  id, scope: scopeSchema.parse(JSON.parse(scope)), name, createdAt: createdAt.toISOString(), expiresAt: expiresAt.toISOString(), lastSeenAt: lastSeenAt.toISOString(),
})

/** A new grant with a token of 256 random bits, of which only the hash is kept: the token itself lives on the device alone. */
export async function makeGrant(rows: Pick<Database, 'deviceGrant'>, { scope, name, days }: { scope: Scope; name: string; days: number }, now = new Date()): Promise<MadeGrant> {
  const token = randomBytes(32).toString('base64url')
  const data = { id: randomUUID(), tokenHash: hashOf(token), scope: JSON.stringify(scope), name, createdAt: now, lastSeenAt: now, expiresAt: new Date(now.getTime() + days * DAY_ms) }
  return { grant: grantOf(await rows.deviceGrant.create({ data })), token }
}

async function findByCookie(database: Database, cookies: string | null, cookie: string, now: Date): Promise<Grant | undefined> {
  const token = cookies?.split(';').map((part) => part.trim()).find((part) => part.startsWith(`${cookie}=`))?.slice(cookie.length + 1)
  if (token === undefined || !TOKEN.test(token)) return undefined
  // Found by a hash that whoever asks cannot steer, so the time a look-up takes says nothing of the token.
  const row = await database.deviceGrant.findUnique({ where: { tokenHash: hashOf(token) } })
  if (!row || row.revokedAt || row.expiresAt <= now) return undefined
  if (now.getTime() - row.lastSeenAt.getTime() > SEEN_EVERY_ms) await database.deviceGrant.update({ where: { id: row.id }, data: { lastSeenAt: now } })
  return grantOf(row)
}

const isSeatGrant = (grant: Grant): grant is Grant<SeatScope> => grant.scope.kind === 'seat'
const isDistrictGrant = (grant: Grant): grant is Grant<DistrictScope> => grant.scope.kind !== 'seat'

/** The district that the cookies of a request open; undefined for none, one taken back, one that has ended, and a seat's token under this name. */
export async function findGrant(database: Database, cookies: string | null, now = new Date()): Promise<Grant<DistrictScope> | undefined> {
  const grant = await findByCookie(database, cookies, GRANT_COOKIE, now)
  return grant && isDistrictGrant(grant) ? grant : undefined
}

/** The seat that they open; undefined likewise, and for a district's token under this name. */
export async function findSeatGrant(database: Database, cookies: string | null, now = new Date()): Promise<Grant<SeatScope> | undefined> {
  const grant = await findByCookie(database, cookies, SEAT_COOKIE, now)
  return grant && isSeatGrant(grant) ? grant : undefined
}

/** Those that are good now, the last seen first. */
export async function listGrants(database: Database, now = new Date()): Promise<Grant[]> {
  const rows = await database.deviceGrant.findMany({ where: { revokedAt: null, expiresAt: { gt: now } }, orderBy: [{ lastSeenAt: 'desc' }, { id: 'asc' }] })
  return rows.map(grantOf)
}

/** Takes a grant back, at once: the next request of that device is one without any. */
export async function revokeGrant(database: Database, id: string, now = new Date()): Promise<void> {
  const { count } = await database.deviceGrant.updateMany({ where: { id, revokedAt: null }, data: { revokedAt: now } })
  if (count === 0) throw refusal('not-found', { thing: 'device' }, 'id')
  tellChanged(`grant:${id}`)
}

/** Gives a grant back that was taken back by mistake: its device still has the token, and need not join anew. */
export async function restoreGrant(database: Database, id: string, now = new Date()): Promise<void> {
  const { count } = await database.deviceGrant.updateMany({ where: { id, revokedAt: { not: null }, expiresAt: { gt: now } }, data: { revokedAt: null } })
  if (count === 0) throw refusal('not-found', { thing: 'device' }, 'id')
}

/** The cookie that a device keeps; no page can read it. */
export const grantCookie = ({ grant, token }: MadeGrant): string =>
  `${grant.scope.kind === 'seat' ? SEAT_COOKIE : GRANT_COOKIE}=${token}; Path=/; Secure; HttpOnly; SameSite=Strict; Expires=${new Date(grant.expiresAt).toUTCString()}`
