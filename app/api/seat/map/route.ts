import { seesMap } from '@/lib/exercise'
import { getBlob } from '@/app/_server/blobs'
import { requireSeatGrant } from '@/app/_server/devices/access'
import { door } from '@/app/_server/door'
import { roomOf } from '@/app/_server/exercise/rooms'
import { getDatabase } from '@/app/_server/open-database'
import { refusal } from '@/app/_server/refusal'

/** The drawn map of the exercise's district, for seats that see where everybody is. */
export const GET = door(async (_request, _params, viewer) => {
  const { scope } = requireSeatGrant(viewer)
  const hash = seesMap(scope.role) ? (await roomOf(scope.exerciseId).current())?.exercise.bundle.district.map?.hash : undefined
  if (hash === undefined) throw refusal('not-found', { thing: 'map' })
  const { bytes } = await getBlob(await getDatabase(), hash)
  return new Response(bytes, { headers: { 'Content-Type': 'application/octet-stream', 'Cache-Control': 'private, max-age=86400' } })
})
