import { restoreGrant, revokeGrant } from '@/app/_server/devices/grants'
import { door } from '@/app/_server/door'
import { getDatabase } from '@/app/_server/open-database'

export const DELETE = door<{ id: string }>(async (_request, { id }) => {
  await revokeGrant(await getDatabase(), id)
  return new Response(null, { status: 204 })
})

export const PUT = door<{ id: string }>(async (_request, { id }) => {
  await restoreGrant(await getDatabase(), id)
  return new Response(null, { status: 204 })
})
