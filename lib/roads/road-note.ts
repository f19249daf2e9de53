import type { Point } from '../geo'
import { issue, type Issue } from '../issue'
import type { RoadGraph } from './road-graph'
import { findNearest } from './find-nearest'

/** What an officer noted at a place on a road; it stands against anything imported. A field that is absent says nothing. */
export type RoadNoteLike = {
  readonly id: string
  readonly point: Point
  /** `false` opens a road that the data shows as closed, and a barrier close to the note. */
  readonly closed?: boolean
  readonly maxWeight_lb?: number
  readonly maxHeight_ft?: number
  readonly maxWidth_ft?: number
  readonly speed_mph?: number
  /** Along the road as it is drawn in the data. */
  readonly oneWay?: 'no' | 'forward' | 'backward'
}

/** Where a note took hold. */
export type NoteHold = { readonly noteId: string; readonly edge: number; readonly point: Point; readonly distance_ft: number }

export type NotedEdge = Omit<RoadNoteLike, 'id' | 'point'> & { readonly noteIds: readonly string[]; readonly points: readonly Point[] }

/** A note further than this from any road is about no road in the data. */
export const NOTE_REACH_FT = 300

/**
 * Lays the notes on their nearest roads. Of several on one piece of road, the later in the
 * list stands, field by field.
 *
 * @returns notes by edge, where each took hold, and `road-note-off-network` for those that did not
 */
export function placeNotes(graph: RoadGraph, notes: readonly RoadNoteLike[]): { noted: Map<number, NotedEdge>; holds: NoteHold[]; issues: Issue[] } {
  const noted = new Map<number, NotedEdge>()
  const holds: NoteHold[] = []
  const issues: Issue[] = []
  for (const { id, point, ...fields } of notes) {
    const nearest = findNearest(graph, point)
    if (!nearest || nearest.distance_ft > NOTE_REACH_FT) {
      issues.push(issue('road-note-off-network', 'warn', [id], nearest ? { distance_ft: nearest.distance_ft } : {}))
      continue
    }
    const before = noted.get(nearest.edge)
    noted.set(nearest.edge, {
      ...before,
      ...Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)),
      noteIds: [...(before?.noteIds ?? []), id],
      points: [...(before?.points ?? []), point],
    })
    holds.push({ noteId: id, edge: nearest.edge, point: nearest.point, distance_ft: nearest.distance_ft })
  }
  return { noted, holds, issues }
}
