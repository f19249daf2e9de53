import type { Tags } from './network'
import type { StretchPlan } from './stretches'

/** Parts of roads that differ from the rest: their name, their posting, what lies under the wheels. */
export const stretchPlans: readonly StretchPlan[] = [
  { road: 'sr88', from: [5500, 5345], to: [6560, 5636], tags: { name: 'Main Street', maxspeed: '30 mph' } },
  { road: 'sr88', from: [310, 3740], to: [900, 3635], tags: { maxspeed: '35 mph' } },
  { road: 'cr12', from: [8420, 3570], to: [9190, 3000], tags: { maxspeed: '30 mph' } },
  { road: 'coveredbridge', from: [3650, 3800], to: [3675, 3625], tags: { surface: 'gravel' } },
  { road: 'hollowroad', from: [7050, 7900], to: [6500, 9000], tags: { surface: 'gravel' } },
  { road: 'coldspringroad', from: [1850, 1400], to: [2400, 0], tags: { surface: 'gravel' } },
]

/** What is known of single bridges, by a place near each. */
export const bridgeNotes: readonly { near: readonly [number, number]; tags: Tags }[] = [
  { near: [6045, 5145], tags: { 'bridge:name': 'Depot Street Bridge' } },
  // The shortest way from the high bank to Yarrow Bank: most tenders may cross it empty, not loaded.
  { near: [3515, 4275], tags: { name: 'Covered Bridge', surface: 'wood', maxweight: '15 st', maxheight: "11'6\"", lanes: '1' } },
  { near: [1150, 2970], tags: { name: 'Iron Bridge', maxweight: '36 st' } },
  { near: [8560, 6710], tags: { 'bridge:name': 'Sorrel Bridge' } },
]

/** Roads whose bridges are inspected and stand without a posting; of the others nothing is known. */
export const inspectedRoads: ReadonlySet<string> = new Set(['sr88', 'cr12', 'cr7'])

/** Where Depot Street dips under the railway; the posting stands on the abutment. */
export const underpassTags = { maxheight: "10'6\"", name: 'Depot Street' } as const
