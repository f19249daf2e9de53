import { z } from 'zod'
import { endJoinCodes, makeJoinCode } from '@/app/_server/devices/join-codes'
import { scopeSchema } from '@/app/_devices/scope'
import { door } from '@/app/_server/door'
import { getDatabase } from '@/app/_server/open-database'
import { readJson } from '@/app/_server/read-body'

const codeSchema = z.strictObject({ scope: scopeSchema, uses: z.number().int().min(1).max(50), grantDays: z.number().int().min(1).max(400) })

export const POST = door(async (request) => {
  const asked = codeSchema.parse(await readJson(request, 1))
  return Response.json(await makeJoinCode(await getDatabase(), asked), { status: 201 })
})

export const DELETE = door(async () => {
  await endJoinCodes(await getDatabase())
  return new Response(null, { status: 204 })
})
