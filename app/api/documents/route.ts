import { z } from 'zod'
import { checkedDocument, createDocument, listDocuments } from '@/app/_server/documents'
import { door } from '@/app/_server/door'
import { DOCUMENT_LIMIT_MB } from '@/app/_server/limits'
import { getDatabase } from '@/app/_server/open-database'
import { readJson } from '@/app/_server/read-body'
import { documentKinds } from '@/lib/plan'

const querySchema = z.strictObject({
  kind: z.enum(documentKinds).optional(),
  districtId: z.string().min(1).max(64).optional(),
  withDeleted: z.literal('1').optional(),
})

const createSchema = z.strictObject({ doc: z.unknown() })

export const GET = door(async (request) => {
  const { withDeleted, ...filter } = querySchema.parse(Object.fromEntries(new URL(request.url).searchParams))
  return Response.json({ documents: await listDocuments(await getDatabase(), { ...filter, withDeleted: withDeleted === '1' }) })
})

export const POST = door(async (request) => {
  const { doc } = createSchema.parse(await readJson(request, DOCUMENT_LIMIT_MB))
  return Response.json(await createDocument(await getDatabase(), checkedDocument(doc)), { status: 201 })
})
