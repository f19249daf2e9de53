import type { Tags } from '../roads/network'

/** Places of water for the fire service that stand apart from ponds and streams. */
export const waterPoints: readonly { key: string; x: number; y: number; tags: Tags }[] = [
  { key: 'coopersDryHydrant', x: 8462, y: 3404, tags: { emergency: 'fire_hydrant', 'fire_hydrant:type': 'pond', name: 'Cooper’s Pond Dry Hydrant' } },
  { key: 'meetinghouseCistern', x: 8618, y: 3542, tags: { emergency: 'water_tank', 'water_tank:volume': '113600', name: 'Meetinghouse Cistern' } },
  { key: 'boatLaunchDraft', x: 4932, y: 7292, tags: { emergency: 'suction_point', name: 'Boat Launch' } },
]
