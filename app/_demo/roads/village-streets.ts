import type { RoadPlan } from './road-plan'
import type { Tags } from './network'

const street = (name: string, tags: Tags = {}): Tags => ({ highway: 'residential', name, surface: 'asphalt', maxspeed: '25 mph', ...tags })
const drawn = (key: string, tags: Tags, through: RoadPlan['through']): RoadPlan => ({ key, tags, grade: 0.1, isDrawn: true, through })

/** Streets as they grew: along the mill race, up the bank, along the railway. */
export const villageStreets: readonly RoadPlan[] = [
  // Ostrel Mills
  drawn('millstreet', street('Mill Street'), [[5590, 5390], [5572, 5450], [5560, 5525], [5530, 5600]]),
  drawn('highstreet', street('High Street'), [[5560, 5527], [5640, 5524], [5740, 5545], [5860, 5585], [5960, 5640], [6080, 5690], [6215, 5738]]),
  drawn('churchstreet', street('Church Street'), [[5715, 5400], [5700, 5470], [5690, 5534], [5694, 5640], [5740, 5708], [5832, 5722]]),
  drawn('schoollane', street('School Lane'), [[5868, 5434], [5858, 5500], [5852, 5582], [5834, 5660], [5832, 5722], [5868, 5800], [5905, 5860]]),
  drawn('elmstreet', street('Elm Street'), [[6075, 5524], [6050, 5600], [6036, 5672], [6028, 5740], [6034, 5798]]),
  drawn('orchardstreet', street('Orchard Street'), [[6262, 5607], [6236, 5670], [6215, 5738], [6196, 5800], [6190, 5846]]),
  drawn('upperstreet', street('Upper Street'), [[5832, 5722], [5930, 5764], [6034, 5798], [6110, 5830], [6190, 5846]]),
  drawn('tannerystreet', street('Tannery Street'), [[5735, 5402], [5748, 5352], [5760, 5308], [5757, 5282]]),
  drawn('railroadstreet', street('Railroad Street'), [[5760, 5308], [5850, 5318], [5988, 5322], [6090, 5360], [6200, 5410], [6300, 5470], [6372, 5540], [6400, 5618]]),
  drawn('foundrylane', street('Foundry Lane', { oneway: 'yes' }), [[6150, 5570], [6166, 5490], [6180, 5400]]),
  drawn('hillcrest', street('Hillcrest Drive'), [[6034, 5798], [6050, 5860], [6096, 5910], [6160, 5934]]),
  drawn('willowcourt', street('Willow Court'), [[6440, 5624], [6460, 5690], [6510, 5730]]),
  // Dunmarrow
  drawn('meetinghouse', street('Meetinghouse Lane'), [[8556, 3510], [8610, 3556], [8680, 3560], [8740, 3500]]),
  drawn('schoolstreet', street('School Street'), [[8885, 3190], [8930, 3260], [8950, 3330], [8920, 3420], [8860, 3520]]),
  drawn('chapellane', street('Chapel Lane'), [[8950, 3330], [9030, 3330], [9110, 3280], [9140, 3190], [9085, 3080]]),
  drawn('greenlane', street('Green Lane'), [[8758, 3360], [8840, 3350], [8950, 3330]]),
  drawn('coopersrow', street('Cooper’s Row'), [[8556, 3500], [8500, 3440], [8460, 3400]]),
  drawn('fordlane', { highway: 'unclassified', name: 'Ford Lane', surface: 'gravel', lanes: '1' }, [[8792, 3245], [8770, 3160], [8742, 3060], [8760, 2960], [8850, 2880], [8990, 2780]]),
  // Fallow Gap
  drawn('gapstreet', street('Gap Street'), [[420, 3760], [455, 3840], [540, 3880], [640, 3850], [690, 3800]]),
  drawn('gapback', street('Back Street'), [[540, 3880], [560, 3960], [660, 3990]]),
]
