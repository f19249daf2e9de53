/** What the intake gauge shows with the primer running. */
export type VacuumReading = 'none' | 'low-and-steady' | 'builds-then-falls' | 'above-lift-no-water' | 'right-but-pressure-swings'

export type VacuumFaultCode =
  | 'primer-not-turning' | 'primer-oil-or-seal' | 'primer-valve-shut' | 'discharge-or-drain-open' | 'intake-drain-open' | 'tank-to-pump-open'
  | 'suction-coupling-loose' | 'gasket-missing' | 'strainer-not-under' | 'packing-or-seal-leak' | 'pump-leak-elsewhere' | 'intake-valve-shut'
  | 'strainer-blocked' | 'lining-collapsed' | 'lift-too-high' | 'high-spot-in-hose' | 'strainer-too-shallow' | 'gauge-wrong'

export type VacuumFault = {
  readonly code: VacuumFaultCode
  /** What it does to the intake gauge, most telling first. */
  readonly readings: readonly VacuumReading[]
  /** What settles it, by a code with words in the message files. */
  readonly test: 'listen-to-primer' | 'feel-air-at-opening' | 'shut-intake-and-repeat' | 'watch-vacuum-with-primer-off' | 'look-at-strainer' | 'compare-lift' | 'look-along-hose' | 'second-gauge' | 'look-at-valves'
}

/**
 * What to check when no vacuum builds, in the order to check it: what is quick to look at
 * and often wrong comes first.
 *
 * The great divider is `shut-intake-and-repeat`: with the intake valve shut the primer pulls on the
 * pump alone; vacuum then: the fault is on the suction side; still none: pump or primer.
 *
 * @source common practice, no published order; the readings follow from where the air gets in
 */
export const vacuumFaults: readonly VacuumFault[] = [
  { code: 'primer-not-turning', readings: ['none'], test: 'listen-to-primer' },
  { code: 'primer-valve-shut', readings: ['none'], test: 'listen-to-primer' },
  { code: 'discharge-or-drain-open', readings: ['none', 'low-and-steady'], test: 'look-at-valves' },
  { code: 'intake-drain-open', readings: ['low-and-steady', 'none', 'right-but-pressure-swings'], test: 'feel-air-at-opening' },
  { code: 'tank-to-pump-open', readings: ['none', 'low-and-steady'], test: 'look-at-valves' },
  { code: 'strainer-not-under', readings: ['none', 'low-and-steady'], test: 'look-at-strainer' },
  { code: 'suction-coupling-loose', readings: ['low-and-steady', 'builds-then-falls', 'right-but-pressure-swings'], test: 'shut-intake-and-repeat' },
  { code: 'gasket-missing', readings: ['low-and-steady', 'builds-then-falls', 'right-but-pressure-swings'], test: 'shut-intake-and-repeat' },
  { code: 'primer-oil-or-seal', readings: ['low-and-steady'], test: 'shut-intake-and-repeat' },
  { code: 'packing-or-seal-leak', readings: ['builds-then-falls', 'low-and-steady'], test: 'watch-vacuum-with-primer-off' },
  { code: 'pump-leak-elsewhere', readings: ['builds-then-falls', 'low-and-steady'], test: 'watch-vacuum-with-primer-off' },
  { code: 'intake-valve-shut', readings: ['above-lift-no-water'], test: 'look-at-valves' },
  { code: 'strainer-blocked', readings: ['above-lift-no-water'], test: 'look-at-strainer' },
  { code: 'lining-collapsed', readings: ['above-lift-no-water'], test: 'look-along-hose' },
  { code: 'lift-too-high', readings: ['low-and-steady', 'above-lift-no-water'], test: 'compare-lift' },
  { code: 'high-spot-in-hose', readings: ['right-but-pressure-swings', 'builds-then-falls'], test: 'look-along-hose' },
  { code: 'strainer-too-shallow', readings: ['right-but-pressure-swings', 'builds-then-falls'], test: 'look-at-strainer' },
  { code: 'gauge-wrong', readings: ['none', 'above-lift-no-water'], test: 'second-gauge' },
]

/**
 * The faults that a reading leaves standing, the ones it tells most of first, else in the order to check.
 *
 * @param reading           what the gauge shows with the primer running
 * @param vacuumIntakeShut  what it does with the intake valve shut, if that was tried: true, it builds
 */
export function faultsFor(reading: VacuumReading, vacuumIntakeShut?: boolean): readonly VacuumFault[] {
  return vacuumFaults
    .filter((fault) => fault.readings.includes(reading))
    .filter((fault) => vacuumIntakeShut === undefined || suctionSide.has(fault.code) === vacuumIntakeShut)
    .sort((a, b) => a.readings.indexOf(reading) - b.readings.indexOf(reading))
}

const suctionSide: ReadonlySet<VacuumFaultCode> = new Set<VacuumFaultCode>(['intake-drain-open', 'suction-coupling-loose', 'gasket-missing',
  'strainer-not-under', 'strainer-blocked', 'lining-collapsed', 'lift-too-high', 'high-spot-in-hose', 'strainer-too-shallow', 'intake-valve-shut'])
