import { getDocument } from '@/app/_server/documents'
import { findViewer } from '@/app/_server/devices/viewer'
import { requireAccess } from '@/app/_server/devices/access'
import { door } from '@/app/_server/door'
import { findRoom } from '@/app/_server/exercise/rooms'
import { onChanged } from '@/app/_server/live/changes'
import { eventStream } from '@/app/_server/live/event-stream'
import { getDatabase } from '@/app/_server/open-database'

/** Says each time that a document stands at another number; what is new in it is asked for by that number. */
export const GET = door<{ id: string }>(async (request, { id }) => {
  const database = await getDatabase()
  await getDocument(database, id)
  return eventStream(request.signal, async ({ send }) => {
    let said = ''
    let turn: Promise<void> = Promise.resolve()
    const tell = () => (turn = turn.then(async () => {
      const row = await database.document.findUnique({ where: { id }, select: { sequence: true, deletedAt: true } })
      const data = JSON.stringify({ sequence: row?.sequence ?? 0, isDeleted: row?.deletedAt instanceof Date })
      if (data === said) return
      said = data
      send({ event: 'changed', id: String(row?.sequence ?? 0), data })
    }).catch((error: unknown) => { console.error(error) }))
    const tellSeats = () => { send({ event: 'seats', data: JSON.stringify([...(findRoom(id)?.present ?? [])]) }) }
    const ends = [onChanged(`document:${id}`, () => void tell()), onChanged(`seats:${id}`, tellSeats)]
    await tell()
    tellSeats()
    send({ event: 'ready', data: '{}' })
    return () => { for (const end of ends) end() }
  }, async () => {
    const viewer = await findViewer(request.headers, getDatabase)
    return requireAccess(viewer, 'GET', new URL(request.url).pathname, getDatabase).then(() => true, () => false)
  })
})
