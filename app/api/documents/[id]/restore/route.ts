import { restore } from '@/app/_server/documents'
import { door } from '@/app/_server/door'
import { getDatabase } from '@/app/_server/open-database'

export const POST = door<{ id: string }>(async (_request, { id }) => {
  await restore(await getDatabase(), id)
  return new Response(null, { status: 204 })
})
