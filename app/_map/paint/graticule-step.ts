/** Steps of a graticule in degrees, each a whole share of the one before: degrees, minutes, seconds. */
const STEPS = [10, 5, 2, 1, 1 / 2, 1 / 6, 1 / 12, 1 / 30, 1 / 60, 1 / 120, 1 / 360, 1 / 720, 1 / 1800, 1 / 3600]

/** The finest step whose lines are at least so far apart. */
export function graticuleStep(degreesPerPixel: number, nearest_px: number): number {
  return STEPS.findLast((step) => step / degreesPerPixel >= nearest_px) ?? 10
}
