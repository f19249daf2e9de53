/** Hydrants of Ostrel Mills, on one four-inch main under its older streets. */
export const hydrantSpots: readonly (readonly [x: number, y: number])[] = [
  [5562, 5366], [5656, 5394], [5762, 5404], [5874, 5420], [5968, 5486], [6082, 5538], [6186, 5588],
  [5566, 5534], [5694, 5540], [5862, 5592], [6042, 5676], [5842, 5316], [5998, 5332],
]
