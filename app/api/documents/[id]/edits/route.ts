import { z } from 'zod'
import { getDocument } from '@/app/_server/documents'
import { door } from '@/app/_server/door'
import { appendEdits, listEdits } from '@/app/_server/edits'
import { DOCUMENT_LIMIT_MB, EDITS_AT_ONCE } from '@/app/_server/limits'
import { getDatabase } from '@/app/_server/open-database'
import { readJson } from '@/app/_server/read-body'
import { editSchema } from '@/lib/plan'

type Params = { id: string }

const querySchema = z.strictObject({ after: z.coerce.number().int().min(0).default(0) })

const sendSchema = z.strictObject({
  edits: z.array(editSchema.extend({ at: z.iso.datetime({ offset: true }) })).min(1).max(EDITS_AT_ONCE),
  force: z.boolean().optional(),
})

export const GET = door<Params>(async (request, { id }) => {
  const { after } = querySchema.parse(Object.fromEntries(new URL(request.url).searchParams))
  const database = await getDatabase()
  const { sequence, isDeleted } = await getDocument(database, id)
  return Response.json({ sequence, isDeleted, history: await listEdits(database, id, after) })
})

export const POST = door<Params>(async (request, { id }) => {
  const { edits, force } = sendSchema.parse(await readJson(request, DOCUMENT_LIMIT_MB))
  return Response.json(await appendEdits(await getDatabase(), id, edits, { force }))
})
