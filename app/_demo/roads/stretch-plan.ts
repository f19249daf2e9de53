import type { StretchPlan } from './stretches'

/** Parts of roads that differ from the rest: their name, their posting, what lies under the wheels. */
export const stretchPlans: readonly StretchPlan[] = [
  { road: 'sr88', from: [5500, 5345], to: [6560, 5636], tags: { name: 'Main Street', maxspeed: '30 mph' } },
  { road: 'sr88', from: [310, 3740], to: [900, 3635], tags: { maxspeed: '35 mph' } },
  { road: 'cr12', from: [8420, 3570], to: [9190, 3000], tags: { maxspeed: '30 mph' } },
  // The shortest way from the high bank to Yarrow Bank: a tender crosses it empty, not loaded.
  { road: 'coveredbridge', from: [3507, 4298], to: [3524, 4254], tags: { maxweight: '15 st', name: 'Covered Bridge', lanes: '1', maxheight: "11'6\"" } },
  { road: 'coveredbridge', from: [3650, 3800], to: [3675, 3625], tags: { surface: 'gravel' } },
  { road: 'hollowroad', from: [7050, 7900], to: [6500, 9000], tags: { surface: 'gravel' } },
  { road: 'coldspringroad', from: [1850, 1400], to: [2400, 0], tags: { surface: 'gravel' } },
]

/** Names of bridges, by a place near each. */
export const bridgeNames: readonly { near: readonly [number, number]; name: string }[] = [
  { near: [6045, 5145], name: 'Depot Street Bridge' },
  { near: [1150, 2970], name: 'Iron Bridge' },
  { near: [8560, 6710], name: 'Sorrel Bridge' },
]

/** Where Depot Street dips under the railway; the posting stands on the abutment. */
export const underpassTags = { maxheight: "10'6\"", name: 'Depot Street' } as const
