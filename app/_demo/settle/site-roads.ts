import type { RoadPlan } from '../roads/road-plan'
import type { Tags } from '../roads/network'

const service = (name: string | undefined, tags: Tags = {}): Tags => ({ highway: 'service', ...(name ? { name } : {}), surface: 'gravel', ...tags })
const deadEnd = (key: string, tags: Tags, through: RoadPlan['through']): RoadPlan => ({ key, tags, grade: 0.1, isDrawn: true, isDeadEnd: true, through })
const drawn = (key: string, tags: Tags, through: RoadPlan['through']): RoadPlan => ({ key, tags, grade: 0.1, isDrawn: true, through })

/** Loops and pull-offs where apparatus fills or turns: drawn, as they are on the ground. */
export const siteRoads: readonly RoadPlan[] = [
  drawn('boatlaunch', service('Boat Launch Loop', { oneway: 'yes' }), [[5020, 7335], [4982, 7330], [4950, 7316], [4937, 7294], [4952, 7268], [4990, 7258], [5018, 7256]]),
  drawn('millyard', service('Mill Yard', { oneway: 'yes', surface: 'asphalt' }), [[5530, 5600], [5496, 5640], [5472, 5688], [5492, 5730], [5538, 5712], [5550, 5660], [5530, 5600]]),
  deadEnd('damroad', service('Dam Road'), [[5035, 7085], [5005, 7105], [4977, 7138]]),
  deadEnd('pulloff', service('River Pull-off'), [[3476, 4372], [3456, 4350], [3452, 4302]]),
  deadEnd('landing', service('Iron Bridge Landing', { surface: 'grass' }), [[1040, 3052], [1066, 3020], [1098, 2992]]),
  drawn('schooldrive', service('School Drive', { surface: 'asphalt' }), [[8900, 3212], [8950, 3228], [9005, 3222], [9060, 3214], [9142, 3205]]),
  deadEnd('apron1', service(undefined, { surface: 'concrete' }), [[5664, 5390], [5668, 5364]]),
  deadEnd('apron2', service(undefined, { surface: 'concrete' }), [[8645, 3372], [8629, 3354]]),
  deadEnd('apron7', service(undefined, { surface: 'concrete' }), [[495, 3694], [490, 3664]]),
  drawn('feedyard', service('Feed Mill Yard', { surface: 'asphalt' }), [[5850, 5318], [5846, 5290], [5858, 5266], [5910, 5264], [5918, 5290], [5912, 5320]]),
]

/** The same, where they join the lanes of farms. */
export const farmSiteRoads: readonly RoadPlan[] = [
  drawn('applegarthloop', service('Applegarth Loop', { oneway: 'yes', access: 'private' }), [[2751, 4462], [2728, 4482], [2722, 4515], [2730, 4548], [2760, 4566]]),
  deadEnd('kettlepond', { highway: 'track', name: 'Kettle Pond Track', tracktype: 'grade3', surface: 'grass', access: 'private' }, [[6318, 7296], [6290, 7350], [6255, 7400], [6240, 7442]]),
]
