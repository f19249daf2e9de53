import { z } from 'zod'
import { requireSeatGrant } from '@/app/_server/devices/access'
import { RateLimit } from '@/app/_server/devices/rate-limit'
import { door } from '@/app/_server/door'
import { takeAct } from '@/app/_server/exercise/take-act'
import { getDatabase } from '@/app/_server/open-database'
import { readJson } from '@/app/_server/read-body'
import { refusal } from '@/app/_server/refusal'
import { changeSchema } from '@/lib/plan'

const id = z.string().regex(/^[\w-]{8,40}$/)
const actSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('decide'), id, change: changeSchema }),
  z.strictObject({ kind: z.literal('note'), id, text: z.string().trim().min(1).max(2000) }),
])

/** More than a person decides and writes, and fewer than would drown an exercise. */
const MOST_IN_A_MINUTE = 30
const MOST_OF_ALL = 600

// One for the process: kept on the global object, for this module may be loaded more than once.
const held = globalThis as typeof globalThis & { millraceActLimit?: RateLimit }

export const POST = door(async (request, _params, viewer) => {
  const grant = requireSeatGrant(viewer)
  held.millraceActLimit ??= new RateLimit(MOST_IN_A_MINUTE, MOST_OF_ALL, 60_000)
  if (!held.millraceActLimit.take(grant.id)) throw refusal('seat-too-often')
  const act = actSchema.parse(await readJson(request, 1))
  return Response.json(await takeAct(await getDatabase(), grant, act), { status: 201 })
})
