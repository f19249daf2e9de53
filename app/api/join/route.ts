import { z } from 'zod'
import { grantCookie } from '@/app/_server/devices/grants'
import { joinByCode, joinLimit } from '@/app/_server/devices/join-codes'
import { firstPageOf } from '@/app/_devices/scope'
import { wayOf } from '@/app/_server/devices/way'
import { door } from '@/app/_server/door'
import { getDatabase } from '@/app/_server/open-database'
import { readJson } from '@/app/_server/read-body'

const joinSchema = z.strictObject({ code: z.string().min(1).max(40), name: z.string().trim().min(1).max(60) })

// One for the process: kept on the global object, for this module may be loaded more than once.
const held = globalThis as typeof globalThis & { millraceJoinLimit?: ReturnType<typeof joinLimit> }

export const POST = door(async (request) => {
  held.millraceJoinLimit ??= joinLimit()
  const { code, name } = joinSchema.parse(await readJson(request, 1))
  const way = wayOf(request.headers)
  const made = await joinByCode(await getDatabase(), { code, name, who: way.kind === 'network' ? way.address : '' }, held.millraceJoinLimit)
  return Response.json({ page: firstPageOf(made.grant.scope) }, { status: 201, headers: { 'Set-Cookie': grantCookie(made) } })
})
