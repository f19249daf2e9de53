import { issue, requireNotNegative, requireThat, type Issue } from '../issue'
import { dryHydrantLoss_ft, type DryHydrant } from './dry-hydrant-loss'
import { strainerExtraVelocityHeads, type StrainerKind } from './strainer'
import { suctionCoefficient } from './suction-coefficient'
import { velocityHead_ft } from './velocity-head'

export type IntakePlace = 'side' | 'front' | 'rear'

/** Equal lines of hard suction from the water, or from a dry hydrant, into a pumper. */
export type SuctionSetup = {
  readonly size_in: number
  /** Hose of each line; with a dry hydrant, the hose from its connection to the pumper. */
  readonly length_ft: number
  /** Equal lines at once, 1 or more. */
  readonly lineCount: number
  /** Default `barrel`. Not looked at with a dry hydrant, whose strainer is its own. */
  readonly strainer?: StrainerKind
  /** Measured loss of the strainer beyond a barrel's, at 1,000 gpm through one line. */
  readonly strainerExtraAt1000gpm_ft?: number
  /** Default `side`. */
  readonly intake?: IntakePlace
  /** Measured loss of the intake piping beyond a side intake's, at 1,000 gpm through one line. */
  readonly intakeExtraAt1000gpm_ft?: number
  /** Each line drinks from a dry hydrant of this make. */
  readonly dryHydrant?: DryHydrant
}

/**
 * Loss of front and rear intake piping beyond a side intake's, at 1,000 gpm, where nobody has measured it.
 *
 * A run of 5 or 6 in pipe with two to four elbows and a valve is two to five velocity heads: a wide range, and a reason
 * to measure.
 *
 * @source assumed, from the minor-loss coefficients of hydraulics references (elbow 0.3–0.6, valve 0.2–1)
 */
export const assumedIntakeExtraAt1000gpm_ft: Readonly<Record<IntakePlace, { low_ft: number; typical_ft: number; high_ft: number }>> = {
  side: { low_ft: 0, typical_ft: 0, high_ft: 0 },
  front: { low_ft: 3, typical_ft: 7, high_ft: 14 },
  rear: { low_ft: 2, typical_ft: 5, high_ft: 10 },
}

/** Where in the assumed range the unmeasured intake loss is taken. */
export type IntakeGuess = 'low_ft' | 'typical_ft' | 'high_ft'

/**
 * Loss of a suction set-up when 1,000 gpm in all goes through it; everything in it scales with the square of the flow.
 *
 *   S = [entrance + perFoot · length + strainer extra + intake extra (+ dry hydrant)] / lines²
 *
 * With a dry hydrant its own strainer replaces the entrance part. Set-ups given together run in parallel:
 * 1/√S = Σ 1/√Sᵢ.
 *
 * @param setup one kind of line, or several kinds side by side
 * @param guess where in its assumed range an unmeasured front or rear intake is taken; default typical
 * @returns S, [ft of water at 1,000 gpm]
 * @throws RangeError if a size, length or count is out of range
 * @source suctionCoefficient, dryHydrantLoss_ft; strainers and intakes as marked there
 */
export function suctionLossAt1000gpm_ft(setup: SuctionSetup | readonly SuctionSetup[], guess: IntakeGuess = 'typical_ft'): number {
  if (!isOne(setup)) {
    requireThat(setup.length > 0, 'setup', '[]', 'at least one line')
    const sum = setup.reduce((total, one) => total + 1 / Math.sqrt(suctionLossAt1000gpm_ft(one, guess)), 0)
    return 1 / sum ** 2
  }
  const { size_in, length_ft, lineCount, dryHydrant, intake = 'side', strainer = 'barrel' } = setup
  requireNotNegative('length_ft', length_ft)
  requireThat(Number.isInteger(lineCount) && lineCount >= 1, 'lineCount', lineCount, 'a whole number of 1 or more')
  const { entrance_ft, perFoot_ft } = suctionCoefficient(size_in)
  const intakeExtra_ft = setup.intakeExtraAt1000gpm_ft ?? assumedIntakeExtraAt1000gpm_ft[intake][guess]
  const start_ft = dryHydrant
    ? dryHydrantLoss_ft(dryHydrant, 1000)
    : entrance_ft + (setup.strainerExtraAt1000gpm_ft ?? strainerExtraVelocityHeads[strainer] * velocityHead_ft(1000, size_in))
  return (start_ft + perFoot_ft * length_ft + intakeExtra_ft) / lineCount ** 2
}

/** The arguments of one set-up or several, as a list. */
export const suctionLines = (setup: SuctionSetup | readonly SuctionSetup[]): readonly SuctionSetup[] => (isOne(setup) ? [setup] : setup)

function isOne(setup: SuctionSetup | readonly SuctionSetup[]): setup is SuctionSetup {
  return !Array.isArray(setup)
}

/** What in the set-up is not from a table or a measurement. */
export function suctionIssues(setup: SuctionSetup | readonly SuctionSetup[]): Issue[] {
  const issues: Issue[] = []
  for (const line of suctionLines(setup)) {
    const { size_in, strainer = 'barrel', intake = 'side', dryHydrant } = line
    if (suctionCoefficient(size_in).from === 'beyond') issues.push(issue('suction-size-extrapolated', 'note', [], { size_in }))
    if (strainer !== 'barrel' && line.strainerExtraAt1000gpm_ft === undefined && !dryHydrant) {
      const extra_ft = strainerExtraVelocityHeads[strainer] * velocityHead_ft(1000, size_in)
      issues.push(issue('strainer-loss-assumed', 'note', [], { strainer, extra_ft, flow_gpm: 1000 }))
    }
    if (intake !== 'side' && line.intakeExtraAt1000gpm_ft === undefined) {
      const { low_ft, high_ft } = assumedIntakeExtraAt1000gpm_ft[intake]
      issues.push(issue('intake-loss-unmeasured', 'warn', [], { intake, low_ft, high_ft, flow_gpm: 1000 }))
    }
  }
  return issues
}
