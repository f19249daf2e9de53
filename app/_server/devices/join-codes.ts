import { createHash, randomInt, randomUUID, timingSafeEqual } from 'node:crypto'
import type { Exercise } from '@/lib/plan'
import { scopeSchema, type Scope, type SeatScope } from '../../_devices/scope'
import { docOf } from '../documents'
import type { Database } from '../open-database'
import { refusal } from '../refusal'
import { makeGrant, type MadeGrant } from './grants'
import { RateLimit } from './rate-limit'

/** No letter or digit that is taken for another when read aloud or off a screen: no 0 O, 1 I L. */
export const CODE_LETTERS = '23456789ABCDEFGHJKMNPQRSTUVWXYZ'
const CODE_LENGTH = 8
const CODE_minutes = 15

const MINUTE_ms = 60_000

/**
 * A code of 8 letters out of 31 is one of 8.5e11; with so many tries in the time it is good for, whoever guesses has a
 * chance of about one in ten thousand million for each code that is open.
 */
export const joinLimit = (now?: () => number): RateLimit => new RateLimit(10, 60, CODE_minutes * MINUTE_ms, now)

const hashOf = (code: string): Buffer => createHash('sha256').update(code).digest()

/** A code as it was typed, without spaces and dashes, in capitals. */
export const plainCode = (typed: string): string => typed.toUpperCase().replace(/[\s-]/g, '')

const newCode = (): string => Array.from({ length: CODE_LENGTH }, () => CODE_LETTERS[randomInt(CODE_LETTERS.length)]).join('')

/**
 * A new code, shown once: only its hash is kept.
 *
 * @param uses      how many devices may join with it
 * @param grantDays how long what they get is good for
 */
export async function makeJoinCode(database: Database, { scope, uses, grantDays }: { scope: Scope; uses: number; grantDays: number }, now = new Date()): Promise<{ code: string; expiresAt: string }> {
  await database.joinCode.deleteMany({ where: { expiresAt: { lte: now } } })
  const district = await database.document.findUnique({ where: { id: scope.districtId }, select: { kind: true, deletedAt: true } })
  if (district?.kind !== 'district' || district.deletedAt) throw refusal('not-found', { thing: 'district' }, 'scope.districtId')
  if (scope.kind === 'seat') await requireSeat(database, scope)
  const code = newCode()
  const expiresAt = new Date(now.getTime() + CODE_minutes * MINUTE_ms)
  await database.joinCode.create({ data: { id: randomUUID(), codeHash: hashOf(code).toString('hex'), scope: JSON.stringify(scope), usesLeft: uses, grantDays, createdAt: now, expiresAt } })
  return { code: `${code.slice(0, 4)}-${code.slice(4)}`, expiresAt: expiresAt.toISOString() }
}

/** @throws Refusal unless the exercise is one of the district, and its plan has the site of the seat */
async function requireSeat(database: Database, { exerciseId, districtId, role, siteId }: SeatScope): Promise<void> {
  const row = await database.document.findUnique({ where: { id: exerciseId } })
  if (row?.kind !== 'exercise' || row.districtId !== districtId || row.deletedAt) throw refusal('not-found', { thing: 'exercise' }, 'scope.exerciseId')
  const { plan } = (docOf(row) as unknown as Exercise).bundle
  const sites = { dumpSite: plan.dumpSites, fillSite: plan.fillSites, attack: undefined, waterSupply: undefined }[role]
  if (sites ? !sites.some(({ id }) => id === siteId) : siteId !== undefined) throw refusal('not-found', { thing: 'site' }, 'scope.siteId')
}

/**
 * Lets a device in by its code. Every open code is compared, each in the same time whatever was typed.
 *
 * @param who   address it asks from, for counting tries
 * @param limit counts tries of each address and of all
 * @throws Refusal if there were too many tries, or no open code is this one
 */
export async function joinByCode(database: Database, { code, name, who }: { code: string; name: string; who: string }, limit: RateLimit, now = new Date()): Promise<MadeGrant> {
  if (!limit.take(who)) throw refusal('join-too-often', { minutes: CODE_minutes })
  const given = hashOf(plainCode(code))
  const made = await database.$transaction(async (rows) => {
    const open = await rows.joinCode.findMany({ where: { expiresAt: { gt: now }, usesLeft: { gt: 0 } } })
    let found: (typeof open)[number] | undefined
    for (const row of open) if (timingSafeEqual(Buffer.from(row.codeHash, 'hex'), given)) found = row
    if (!found) return undefined
    if (found.usesLeft > 1) await rows.joinCode.update({ where: { id: found.id }, data: { usesLeft: { decrement: 1 } } })
    else await rows.joinCode.delete({ where: { id: found.id } })
    return makeGrant(rows, { scope: scopeSchema.parse(JSON.parse(found.scope)), name, days: found.grantDays }, now)
  })
  if (!made) throw refusal('join-wrong-code', {}, 'code')
  limit.clear(who)
  return made
}

/** Ends every code that is open, used or not. */
export async function endJoinCodes(database: Database): Promise<void> {
  await database.joinCode.deleteMany({})
}
