/**
 * The classical fire-engine test table: discharge at various lifts, by rated capacity and suction hose.
 *
 * Every cell is from memory (moderate confidence) but one, 590 gpm at 20 ft for 1,000 gpm through 5 in, which was read
 * in a training bulletin that calls its values representative. Above 16 ft the columns disagree with each other.
 *
 * @source rating-bureau fire-engine-tests pamphlet, reprinted in the handbook (memory); tests/reference/draft-lift.json
 */
export const classicalLiftTable = {
  altitude_ft: 1000,
  water_degF: 60,
  netPressure_psi: 150,
  columns: [
    { rated_gpm: 500, size_in: 4 }, { rated_gpm: 500, size_in: 4.5 }, { rated_gpm: 750, size_in: 4.5 }, { rated_gpm: 750, size_in: 5 },
    { rated_gpm: 1000, size_in: 5 }, { rated_gpm: 1000, size_in: 6 }, { rated_gpm: 1250, size_in: 6 }, { rated_gpm: 1500, size_in: 6 },
  ],
  rows: [
    { lift_ft: 4, length_ft: 20, flows_gpm: [590, 660, 870, 945, 1160, 1345, 1435, 1735] },
    { lift_ft: 6, length_ft: 20, flows_gpm: [560, 630, 830, 905, 1110, 1290, 1375, 1660] },
    { lift_ft: 8, length_ft: 20, flows_gpm: [530, 595, 790, 860, 1055, 1230, 1310, 1575] },
    { lift_ft: 10, length_ft: 20, flows_gpm: [500, 560, 750, 820, 1000, 1170, 1250, 1500] },
    { lift_ft: 12, length_ft: 20, flows_gpm: [465, 520, 700, 770, 935, 1105, 1175, 1410] },
    { lift_ft: 14, length_ft: 20, flows_gpm: [430, 480, 650, 720, 870, 1045, 1100, 1325] },
    { lift_ft: 16, length_ft: 20, flows_gpm: [390, 430, 585, 655, 790, 960, 1020, 1225] },
    { lift_ft: 18, length_ft: 20, flows_gpm: [325, 370, 495, 560, 670, 835, 900, 1085] },
    { lift_ft: 20, length_ft: 30, flows_gpm: [270, 310, 425, 480, 590, 725, 790, 955] },
    { lift_ft: 22, length_ft: 30, flows_gpm: [195, 225, 340, 375, 485, 590, 660, 800] },
    { lift_ft: 24, length_ft: 30, flows_gpm: [65, 70, 205, 235, 340, 400, 495, 590] },
  ],
} as const
