import { z } from 'zod'
import { checkedDocument, createDocument, listDocuments } from '@/app/_server/documents'
import { requireCreation, withinReach } from '@/app/_server/devices/access'
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

export const GET = door(async (request, _params, viewer) => {
  const { withDeleted, ...filter } = querySchema.parse(Object.fromEntries(new URL(request.url).searchParams))
  const documents = await listDocuments(await getDatabase(), { ...filter, withDeleted: withDeleted === '1' })
  return Response.json({ documents: withinReach(viewer, documents) })
})

export const POST = door(async (request, _params, viewer) => {
  const { doc } = createSchema.parse(await readJson(request, DOCUMENT_LIMIT_MB))
  const checked = checkedDocument(doc)
  requireCreation(viewer, checked)
  return Response.json(await createDocument(await getDatabase(), checked), { status: 201 })
})
