import { getDatabase } from '../open-database'
import { Room } from './room'

// One for the process: kept on the global object, for this module may be loaded more than once.
const held = globalThis as typeof globalThis & { millraceRooms?: Map<string, Room> }
const rooms = (): Map<string, Room> => (held.millraceRooms ??= new Map())

/** The room of an exercise; those nobody sits in are let go. */
export function roomOf(exerciseId: string): Room {
  for (const [id, room] of rooms()) if (room.size === 0 && id !== exerciseId) rooms().delete(id)
  const room = rooms().get(exerciseId) ?? new Room(exerciseId, getDatabase)
  rooms().set(exerciseId, room)
  return room
}

/** The room where somebody may sit; undefined where nobody has since the start. */
export const findRoom = (exerciseId: string): Room | undefined => rooms().get(exerciseId)

/** Streams open in all rooms. */
export const streamCount = (): number => [...rooms().values()].reduce((sum, { size }) => sum + size, 0)
