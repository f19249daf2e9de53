/** A place on a valley's centre line: east, north, bed elevation (metres), half the width of the flat floor. */
export type ValleySpot = readonly [x: number, y: number, bed_m: number, floor_m: number]

export type StreamPlan = {
  id: string
  name?: string
  kind: 'river' | 'stream'
  width_m: number
  /** How far the water wanders from the centre line, and over what length. */
  meander_m: number
  wave_m: number
  /** Slope of the hillsides. */
  steepness: number
  /** Absent: leaves the frame. */
  into?: string
  valley: readonly ValleySpot[]
}

/** Every stream from its source down to its mouth; a stream stands after the one it flows into. */
export const streamPlans: readonly StreamPlan[] = [
  {
    id: 'ostrel', name: 'Ostrel River', kind: 'river', width_m: 17, meander_m: 230, wave_m: 430, steepness: 0.2,
    valley: [
      [10550, 9300, 236, 130], [9900, 8300, 231, 150], [9250, 7500, 227, 190], [8750, 6700, 223, 200], [7900, 5950, 219, 240], [6900, 5450, 215, 280],
      [5900, 5050, 211, 260], [4900, 4750, 207, 280], [3900, 4250, 203, 330], [2800, 3850, 199, 340], [1700, 3450, 195, 320], [700, 3150, 191, 300], [-300, 2900, 188, 300],
    ],
  },
  {
    id: 'stonecrop', name: 'Stonecrop Creek', kind: 'stream', width_m: 6, meander_m: 53, wave_m: 195, steepness: 0.2, into: 'ostrel',
    valley: [
      [3250, 9300, 330, 40], [3700, 8700, 293, 60], [4050, 8250, 277, 110], [4350, 7750, 270, 150], [4600, 7250, 266, 130], [4850, 6800, 256, 50],
      [5150, 6200, 238, 50], [5450, 5650, 219, 80], [5700, 5000, 210, 120],
    ],
  },
  {
    id: 'fiddlers', name: 'Fiddler’s Brook', kind: 'stream', width_m: 5, meander_m: 65, wave_m: 180, steepness: 0.17, into: 'ostrel',
    valley: [
      [12300, 900, 330, 40], [11400, 1500, 296, 50], [10500, 2150, 271, 90], [9600, 2650, 257, 150], [8800, 3150, 247, 170], [8150, 3900, 235, 100],
      [7700, 4650, 224, 90], [7350, 5600, 216, 120],
    ],
  },
  {
    id: 'kiln', name: 'Kiln Brook', kind: 'stream', width_m: 4, meander_m: 49, wave_m: 158, steepness: 0.19, into: 'ostrel',
    valley: [
      [5950, -300, 352, 30], [5750, 700, 305, 40], [5450, 1600, 272, 70], [5050, 2500, 243, 70], [4650, 3400, 217, 90], [4250, 4400, 204, 120],
    ],
  },
  {
    id: 'badger', name: 'Badger Run', kind: 'stream', width_m: 4, meander_m: 46, wave_m: 150, steepness: 0.2, into: 'ostrel',
    valley: [[900, 8600, 347, 30], [1150, 7600, 307, 40], [1500, 6600, 265, 60], [1850, 5600, 232, 70], [2150, 4700, 209, 90], [2450, 3750, 198, 120]],
  },
  {
    id: 'sorrel', name: 'Sorrel Brook', kind: 'stream', width_m: 4, meander_m: 49, wave_m: 158, steepness: 0.18, into: 'ostrel',
    valley: [[12300, 5450, 296, 60], [11300, 5700, 270, 80], [10400, 6050, 246, 80], [9500, 6400, 230, 100], [8850, 6850, 224, 120]],
  },
  {
    id: 'coldspring', name: 'Cold Spring Branch', kind: 'stream', width_m: 3, meander_m: 42, wave_m: 142, steepness: 0.19, into: 'ostrel',
    valley: [[2550, -300, 330, 30], [2200, 600, 286, 40], [1800, 1500, 244, 60], [1450, 2400, 208, 80], [1250, 3300, 193, 120]],
  },
  {
    id: 'northfork', name: 'Hollow Run', kind: 'stream', width_m: 3, meander_m: 42, wave_m: 135, steepness: 0.21, into: 'ostrel',
    valley: [[6350, 9300, 355, 30], [6650, 8400, 318, 40], [7050, 7500, 275, 40], [7450, 6700, 240, 50], [7950, 5980, 220, 100]],
  },
  {
    id: 'littlefiddler', name: 'Little Fiddler', kind: 'stream', width_m: 2.5, meander_m: 34, wave_m: 120, steepness: 0.18, into: 'fiddlers',
    valley: [[8050, -200, 342, 30], [8300, 800, 300, 40], [8650, 1700, 268, 50], [9050, 2450, 253, 60], [9250, 2870, 252, 80]],
  },
  {
    id: 'westkiln', kind: 'stream', width_m: 2, meander_m: 30, wave_m: 112, steepness: 0.2, into: 'kiln',
    valley: [[3550, 500, 318, 30], [3900, 1400, 280, 40], [4400, 2250, 247, 40], [4850, 2950, 230, 60]],
  },
  {
    id: 'westbadger', kind: 'stream', width_m: 2, meander_m: 30, wave_m: 112, steepness: 0.2, into: 'badger',
    valley: [[-200, 6900, 306, 30], [600, 6300, 268, 40], [1300, 5700, 240, 50], [1900, 5450, 228, 60]],
  },
  {
    id: 'eaststonecrop', kind: 'stream', width_m: 2, meander_m: 27, wave_m: 112, steepness: 0.2, into: 'stonecrop',
    valley: [[5650, 8800, 338, 30], [5300, 8200, 305, 40], [4900, 7750, 282, 40], [4400, 7650, 269, 60]],
  },
  {
    id: 'eastsorrel', kind: 'stream', width_m: 2, meander_m: 30, wave_m: 112, steepness: 0.19, into: 'sorrel',
    valley: [[12200, 7600, 318, 30], [11500, 7000, 284, 40], [10800, 6500, 256, 40], [10300, 6090, 244, 70]],
  },
  {
    id: 'goosebrook', kind: 'stream', width_m: 2, meander_m: 30, wave_m: 112, steepness: 0.19, into: 'fiddlers',
    valley: [[11300, 4300, 312, 30], [10400, 3900, 284, 40], [9500, 3500, 259, 50], [8700, 3280, 245, 70]],
  },
]
