import type { Tags } from './network'

export type RoadPlan = {
  key: string
  tags: Tags
  /** The slope the road is built to bear: gentle for a state road, steep for a track. */
  grade: number
  /** Places it goes through, metres east and north; the way between them follows the ground. */
  through: readonly (readonly [x: number, y: number])[]
  /** Drawn as it stands, not led by the ground: village streets, loops. */
  isDrawn?: boolean
  /** Ends where it was drawn to, whatever road is near. */
  isDeadEnd?: boolean
}

const state = (name: string, ref: string): Tags => ({ highway: 'primary', name, ref, surface: 'asphalt', lanes: '2', maxspeed: '50 mph' })
const county = (name: string, ref: string): Tags => ({ highway: 'tertiary', name, ref, surface: 'asphalt', maxspeed: '40 mph' })
const town = (name: string, surface = 'asphalt'): Tags => ({ highway: 'unclassified', name, surface, ...(surface === 'asphalt' ? { maxspeed: '35 mph' } : {}) })

/** Through roads, in the order in which they were built: each may join the ones before it. */
export const throughRoads: readonly RoadPlan[] = [
  {
    key: 'sr88', tags: state('Ostrel Valley Road', 'SR 88'), grade: 0.09,
    through: [[-250, 3560], [620, 3650], [2080, 4330], [3350, 4720], [4650, 5150], [5480, 5390], [6030, 5480], [6560, 5640], [7330, 6120], [8050, 6720], [8640, 7290], [9330, 8080], [9820, 8760], [10050, 9250]],
  },
  {
    key: 'depotstreet', tags: { ...county('Depot Street', 'CR 12'), maxspeed: '30 mph' }, grade: 0.06, isDrawn: true,
    through: [[5955, 5475], [5985, 5330], [6022, 5205], [6068, 5060], [6105, 4930], [6140, 4790]],
  },
  {
    key: 'cr12', tags: county('Dunmarrow Road', 'CR 12'), grade: 0.06,
    through: [[6140, 4790], [6900, 4850], [7560, 4520], [8150, 3600], [8740, 3260], [9150, 3010], [10050, 2520], [11150, 1850], [12250, 1120]],
  },
  {
    key: 'cr7', tags: county('Stonecrop Road', 'CR 7'), grade: 0.06,
    through: [[5480, 5390], [5200, 5950], [5080, 6500], [5050, 7050], [4860, 7620], [4330, 8360], [3700, 9250]],
  },
  {
    key: 'southriver', tags: county('South River Road', 'CR 9'), grade: 0.06,
    through: [[620, 3650], [800, 3150], [1350, 2830], [2900, 3100], [3700, 3600], [4750, 4150], [5500, 4420], [6110, 4830]],
  },
  { key: 'cr15', tags: county('Badger Run Road', 'CR 15'), grade: 0.07, through: [[2080, 4330], [1950, 5200], [1680, 6000], [1260, 7100], [1000, 8000], [750, 9250]] },
  { key: 'kilnroad', tags: town('Kiln Brook Road'), grade: 0.07, through: [[4370, 3960], [4560, 3300], [5080, 2350], [5350, 1500], [5640, 700], [5800, -250]] },
  { key: 'coldspringroad', tags: town('Cold Spring Road'), grade: 0.07, through: [[1350, 2830], [1480, 2300], [1850, 1450], [2150, 600], [2500, -250]] },
  { key: 'sorrelroad', tags: county('Sorrel Road', 'CR 21'), grade: 0.06, through: [[8640, 7290], [9060, 6900], [9600, 6520], [10550, 6080], [11400, 5780], [12250, 5560]] },
  { key: 'ridgeroad', tags: town('Long Ridge Road'), grade: 0.08, through: [[8740, 3260], [9080, 3900], [9550, 4650], [9820, 5500], [9960, 6310]] },
  { key: 'hollowroad', tags: town('Hollow Run Road'), grade: 0.07, through: [[7330, 6120], [7480, 6900], [7230, 7600], [6750, 8400], [6500, 9250]] },
  { key: 'sugarbush', tags: town('Sugarbush Road', 'gravel'), grade: 0.09, through: [[1230, 7250], [1950, 7650], [2800, 7900], [3500, 8150], [4200, 8480]] },
  { key: 'fiddlerroad', tags: town('Little Fiddler Road'), grade: 0.07, through: [[9150, 3010], [8880, 2200], [8450, 1150], [8150, 350], [8000, -250]] },
  { key: 'crosshill', tags: town('Cross Hill Road', 'gravel'), grade: 0.09, through: [[5080, 2350], [5900, 2700], [6700, 3050], [7500, 3100], [8500, 3330]] },
  { key: 'sistersroad', tags: town('Three Sisters Road', 'gravel'), grade: 0.09, through: [[1850, 1450], [2650, 1750], [3400, 1700], [4250, 2050], [4950, 2600]] },
  { key: 'coveredbridge', tags: town('Covered Bridge Road'), grade: 0.07, through: [[3350, 4720], [3480, 4350], [3650, 3950], [3700, 3600]] },
  { key: 'kettleroad', tags: town('Kettle Road'), grade: 0.08, through: [[5050, 7050], [5700, 7300], [6350, 7350], [7250, 7560]] },
  { key: 'goosefoot', tags: town('Goosefoot Road'), grade: 0.08, through: [[8960, 3600], [9600, 3560], [10300, 3880], [10900, 4250]] },
  { key: 'eastview', tags: town('Eastview Road', 'gravel'), grade: 0.09, through: [[10900, 4250], [11000, 5000], [11200, 5830]] },
  { key: 'northsorrel', tags: town('Larkspur Road', 'gravel'), grade: 0.08, through: [[10250, 6230], [10750, 6560], [11400, 7000], [12250, 7650]] },
  { key: 'westbadger', tags: town('Hatchet Hill Road', 'gravel'), grade: 0.09, through: [[1720, 5900], [1250, 5880], [650, 6350], [-250, 6850]] },
  { key: 'fallowroad', tags: town('Fallow Hill Road'), grade: 0.08, through: [[620, 3650], [700, 4300], [1150, 4900], [1950, 5150]] },
  { key: 'lockroad', tags: town('Sawpit Road', 'gravel'), grade: 0.09, through: [[10050, 2520], [10500, 3000], [10700, 3500], [10500, 3960]] },
]

const track = (name: string | undefined, tracktype: string, surface: string): Tags => ({ highway: 'track', ...(name ? { name } : {}), tracktype, surface })

/** Forest tracks and other ways that end, laid after the farms. */
export const lesserRoads: readonly RoadPlan[] = [
  { key: 'loggingtrack', tags: track('Old Logging Road', 'grade3', 'ground'), grade: 0.12, through: [[5100, 8100], [5700, 8350], [6050, 8750], [6480, 8900]] },
  { key: 'ridgetrack', tags: track(undefined, 'grade4', 'ground'), grade: 0.12, through: [[2200, 7740], [2350, 7000], [2900, 6400], [3300, 5700]] },
  { key: 'dugway', tags: track('The Dugway', 'grade2', 'gravel'), grade: 0.12, through: [[3350, 4980], [3300, 5700], [3900, 6100], [4600, 6300], [5010, 6330]] },
  { key: 'eastwoods', tags: track(undefined, 'grade4', 'grass'), grade: 0.12, through: [[11050, 5300], [10500, 5250], [10050, 5050], [9650, 4900]] },
  { key: 'southwoods', tags: track(undefined, 'grade3', 'ground'), grade: 0.12, through: [[5700, 550], [6400, 700], [7100, 1100], [7500, 1700]] },
  { key: 'powderhouse', tags: track('Powderhouse Track', 'grade3', 'dirt'), grade: 0.12, through: [[7300, 3080], [7200, 2400], [7450, 1800]] },
  { key: 'quarryroad', tags: { highway: 'unclassified', name: 'Quarry Road', surface: 'gravel' }, grade: 0.1, through: [[5350, 1500], [5900, 1750], [6350, 2150]] },
  { key: 'westshore', tags: track('West Shore Track', 'grade3', 'ground'), grade: 0.12, through: [[4130, 8420], [3980, 8100], [4050, 7600], [4350, 7150], [4640, 6990]] },
  { key: 'fiveelms', tags: { highway: 'unclassified', name: 'Five Elms Road', surface: 'gravel' }, grade: 0.1, through: [[9560, 8330], [10050, 8130], [10600, 7900], [11100, 8150]] },
]
