import type { Point } from '@/lib/geo'
import type { EditBody } from '@/lib/plan'
import { grown } from '@/lib/terrain'

/** A district is about so large around the point it is said to lie at, until roads say more: a first look shows it whole. */
const AROUND_START_M = 8000

/** Says where the district lies, by a point of it. */
export const startEdit = ({ lat, lon }: Point): EditBody & { kind: 'setFields' } => ({ kind: 'setFields', set: { bounds: grown({ south: lat, north: lat, west: lon, east: lon }, AROUND_START_M) } })
