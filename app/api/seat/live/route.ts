import { numberOfId } from '@/app/_seat/seat-messages'
import { requireSeatGrant } from '@/app/_server/devices/access'
import { findSeatGrant } from '@/app/_server/devices/grants'
import { door } from '@/app/_server/door'
import { roomOf, streamCount } from '@/app/_server/exercise/rooms'
import { onChanged } from '@/app/_server/live/changes'
import { eventStream } from '@/app/_server/live/event-stream'
import { getDatabase } from '@/app/_server/open-database'
import { refusal } from '@/app/_server/refusal'

/** A device has one page open, or two while it loads anew. */
const MOST_OF_ONE = 4
const MOST_OF_ALL = 200

export const GET = door(async (request, _params, viewer) => {
  const grant = requireSeatGrant(viewer)
  const room = roomOf(grant.scope.exerciseId)
  if (room.streamsOf(grant.id) >= MOST_OF_ONE || streamCount() >= MOST_OF_ALL) throw refusal('seat-too-often')
  const cookies = request.headers.get('cookie')
  return eventStream(request.signal, async (outlet) => {
    const forget = onChanged(`grant:${grant.id}`, outlet.close)
    const leave = await room.join(grant, outlet, numberOfId(request.headers.get('last-event-id')))
    return () => { forget(); leave() }
  }, async () => {
    await room.look()
    return (await findSeatGrant(await getDatabase(), cookies)) !== undefined
  })
})
