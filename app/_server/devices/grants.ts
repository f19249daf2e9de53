import { createHash, randomBytes, randomUUID } from 'node:crypto'
import type { Database } from '../open-database'
import { refusal } from '../refusal'
import { scopeSchema, type Scope } from './scope'

/** `__Host-`: browsers take it only over HTTPS, for this host alone and all of it. */
export const GRANT_COOKIE = '__Host-millrace-device'

const DAY_ms = 24 * 60 * 60 * 1000
const TOKEN = /^[A-Za-z0-9_-]{43}$/
/** How old what is known of the last request may be: not every one is worth a write. */
const SEEN_EVERY_ms = 60_000

export type Grant = { id: string; scope: Scope; name: string; createdAt: string; expiresAt: string; lastSeenAt: string }
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

/** What the cookies of a request grant; undefined for none, one taken back, and one that has ended. */
export async function findGrant(database: Database, cookies: string | null, now = new Date()): Promise<Grant | undefined> {
  const token = cookies?.split(';').map((part) => part.trim()).find((part) => part.startsWith(`${GRANT_COOKIE}=`))?.slice(GRANT_COOKIE.length + 1)
  if (token === undefined || !TOKEN.test(token)) return undefined
  // Found by a hash that whoever asks cannot steer, so the time a look-up takes says nothing of the token.
  const row = await database.deviceGrant.findUnique({ where: { tokenHash: hashOf(token) } })
  if (!row || row.revokedAt || row.expiresAt <= now) return undefined
  if (now.getTime() - row.lastSeenAt.getTime() > SEEN_EVERY_ms) await database.deviceGrant.update({ where: { id: row.id }, data: { lastSeenAt: now } })
  return grantOf(row)
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
}

/** The cookie that a device keeps; no page can read it. */
export const grantCookie = ({ grant, token }: MadeGrant): string =>
  `${GRANT_COOKIE}=${token}; Path=/; Secure; HttpOnly; SameSite=Strict; Expires=${new Date(grant.expiresAt).toUTCString()}`
