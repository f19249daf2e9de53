import { getDocument, softDelete } from '@/app/_server/documents'
import { door } from '@/app/_server/door'
import { getDatabase } from '@/app/_server/open-database'

type Params = { id: string }

export const GET = door<Params>(async (_request, { id }) => Response.json(await getDocument(await getDatabase(), id)))

export const DELETE = door<Params>(async (_request, { id }) => {
  await softDelete(await getDatabase(), id)
  return new Response(null, { status: 204 })
})
