export type FarmPlan = {
  key: string
  name: string
  x: number
  y: number
  /** Name of the lane that leads to it; absent: a plain drive. */
  lane?: string
  kind?: 'dairy' | 'sheep' | 'orchard' | 'hay'
}

/** Farms stand above the flood, near water, at the end of a lane. All names are invented. */
export const farmPlans: readonly FarmPlan[] = [
  { key: 'yarrowBank', name: 'Yarrow Bank Dairy', x: 3010, y: 3170, lane: 'Yarrow Bank Lane', kind: 'dairy' },
  { key: 'applegarth', name: 'Applegarth Farm', x: 2660, y: 4670, kind: 'orchard' },
  { key: 'ganderHill', name: 'Gander Hill Farm', x: 6180, y: 7330, lane: 'Gander Lane', kind: 'hay' },
  { key: 'threeSisters', name: 'Three Sisters Farm', x: 3280, y: 1900, kind: 'sheep' },
  { key: 'crookedGate', name: 'Crooked Gate Farm', x: 1500, y: 5240, kind: 'hay' },
  { key: 'hatchetHill', name: 'Hatchet Hill Farm', x: 820, y: 5980, kind: 'sheep' },
  { key: 'badgerHollow', name: 'Badger Hollow Farm', x: 1420, y: 6830, kind: 'dairy' },
  { key: 'sugarhouse', name: 'Sugarhouse Farm', x: 2700, y: 7740, kind: 'hay' },
  { key: 'lostEwe', name: 'Lost Ewe Farm', x: 3840, y: 8050, lane: 'Lost Ewe Lane', kind: 'sheep' },
  { key: 'kilnside', name: 'Kilnside Farm', x: 4750, y: 2960, kind: 'dairy' },
  { key: 'oldPasture', name: 'Old Pasture Farm', x: 5560, y: 1450, kind: 'hay' },
  { key: 'coldSpring', name: 'Cold Spring Farm', x: 1950, y: 2080, kind: 'dairy' },
  { key: 'fencepost', name: 'Fencepost Farm', x: 1750, y: 900, kind: 'hay' },
  { key: 'riverbend', name: 'Hickory Bend Farm', x: 4120, y: 4640, lane: 'Hickory Bend Lane', kind: 'dairy' },
  { key: 'longAcre', name: 'Longacre Farm', x: 1880, y: 4000, kind: 'dairy' },
  { key: 'ironBridge', name: 'Iron Bridge Farm', x: 1750, y: 2870, kind: 'hay' },
  { key: 'hollowRun', name: 'Hollow Run Farm', x: 7360, y: 7280, kind: 'hay' },
  { key: 'topOfTheRun', name: 'Top of the Run Farm', x: 6480, y: 8330, kind: 'sheep' },
  { key: 'sorrelBrook', name: 'Sorrel Brook Farm', x: 9560, y: 6640, kind: 'dairy' },
  { key: 'larkspur', name: 'Larkspur Farm', x: 11020, y: 6600, kind: 'orchard' },
  { key: 'eastview', name: 'Eastview Farm', x: 11350, y: 4850, lane: 'Eastview Lane', kind: 'hay' },
  { key: 'goosefoot', name: 'Goosefoot Farm', x: 10010, y: 3740, kind: 'dairy' },
  { key: 'longRidge', name: 'Long Ridge Farm', x: 9420, y: 4750, kind: 'sheep' },
  { key: 'sawpit', name: 'Sawpit Farm', x: 10580, y: 3150, kind: 'hay' },
  { key: 'brookside', name: 'Lower Fiddler Farm', x: 8000, y: 4150, lane: 'Fiddler’s Lane', kind: 'dairy' },
  { key: 'littleFiddler', name: 'Little Fiddler Farm', x: 8720, y: 1500, kind: 'hay' },
  { key: 'millerdale', name: 'Thistledown Farm', x: 10650, y: 2150, kind: 'sheep' },
  { key: 'crossHill', name: 'Cross Hill Farm', x: 6950, y: 3130, kind: 'hay' },
  { key: 'valleyView', name: 'Two Chimneys Farm', x: 7600, y: 6560, kind: 'dairy' },
  { key: 'northWater', name: 'North Water Farm', x: 9420, y: 8330, kind: 'dairy' },
  { key: 'kettle', name: 'Kettle Farm', x: 5560, y: 7230, kind: 'hay' },
  { key: 'southMeadow', name: 'South Meadow Farm', x: 5020, y: 4300, kind: 'dairy' },
  { key: 'flatIron', name: 'Flatiron Farm', x: 6900, y: 4960, kind: 'dairy' },
]
