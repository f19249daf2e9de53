import { lengthLimitFromTag, type Tags } from '../osm'

/** What stands in the road at a node. Stored in graphs: never renumber within a version. */
export const nodeKind = { open: 0, gate: 1, barrier: 2, ford: 3 } as const

export type NodeTraits = {
  readonly kind: number
  readonly forwardDelay_s: number
  readonly backwardDelay_s: number
}

/** Seconds lost, on the average, by a heavy vehicle that slows or waits. Common practice, no source. */
const DELAY_S = { signals: 15, stop: 12, giveWay: 6, miniRoundabout: 6, levelCrossing: 8, gate: 30 } as const

/** Barriers that open; all others but those that lie flat in the road stop a tender. */
const gates = new Set(['gate', 'lift_gate', 'swing_gate', 'sliding_gate', 'bump_gate', 'hampshire_gate', 'wicket_gate', 'chain', 'rope', 'toll_booth', 'border_control', 'sally_port', 'checkpoint'])
const flat = new Set(['entrance', 'cattle_grid', 'kerb', 'no', 'railing', 'handrail', 'guard_rail', 'lych_gate'])
/** Highest a truck may stand on ordinary roads in most of the United States, [ft] (state law, from memory). */
const ORDINARY_TRUCK_FT = 13.5

const isOpenedForEmergency = (tags: Tags): boolean => ['yes', 'designated', 'official'].includes(tags['emergency'] ?? '')

function isShut(tags: Tags): boolean {
  for (const key of ['emergency', 'motor_vehicle', 'vehicle', 'access']) {
    const value = tags[key]
    if (value !== undefined) return value === 'no'
  }
  return false
}

/**
 * What a tagged node does to those who drive past it.
 *
 * A gate costs time and is cautioned, locked or not: a crew can open it. A gate closed to
 * vehicles, a bollard, a block and any barrier not known to open is never driven through.
 * Nor is a ford.
 */
export function nodeTraitsOf(tags: Tags): NodeTraits {
  const { barrier, ford, highway, railway } = tags
  if (ford !== undefined && ford !== 'no') return { kind: nodeKind.ford, forwardDelay_s: 0, backwardDelay_s: 0 }
  if (barrier !== undefined && !flat.has(barrier)) {
    const passes = isOpenedForEmergency(tags) || (gates.has(barrier) && !isShut(tags)) || isHighEnough(tags)
    return { kind: passes ? nodeKind.gate : nodeKind.barrier, forwardDelay_s: DELAY_S.gate, backwardDelay_s: DELAY_S.gate }
  }
  const delay_s =
    highway === 'traffic_signals' ? DELAY_S.signals
      : highway === 'stop' ? DELAY_S.stop
        : highway === 'give_way' ? DELAY_S.giveWay
          : highway === 'mini_roundabout' ? DELAY_S.miniRoundabout
            : railway === 'level_crossing' ? DELAY_S.levelCrossing
              : 0
  const direction = tags['traffic_signals:direction'] ?? tags['direction']
  return {
    kind: nodeKind.open,
    forwardDelay_s: direction === 'backward' ? 0 : delay_s,
    backwardDelay_s: direction === 'forward' ? 0 : delay_s,
  }
}

/** A height restrictor high enough for any ordinary truck hinders nobody. */
function isHighEnough(tags: Tags): boolean {
  if (tags['barrier'] !== 'height_restrictor') return false
  const height = lengthLimitFromTag(tags['maxheight'])
  return height.state === 'limit' && height.value >= ORDINARY_TRUCK_FT
}
