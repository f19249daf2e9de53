/** One pumper of a relay at work. */
export type RelayPumperResult = {
  readonly id: string
  readonly isSource: boolean
  /** Feet of hose from the source. */
  readonly at_ft: number
  readonly height_ft: number
  /** On the intake gauge; absent where it drafts, from the source or from a portable tank. */
  readonly intake_psi?: number
  readonly discharge_psi: number
  /** Discharge less intake: what the pump itself makes; absent where it drafts, see `capacityShare`. */
  readonly net_psi?: number
  /** The most it moves at that pressure. */
  readonly most_gpm: number
  /** The relay's flow as a share of that. */
  readonly capacityShare: number
  /** Highest discharge pressure with which all hose it may burst stays within its working pressure when the flow stops. */
  readonly dischargeLimit_psi: number
  /** At its intake when the flow stops and the pumpers before it hold their pressure. */
  readonly stoppedIntake_psi?: number
  /** At its intake with all pumps idle and the hose full from the highest place before it. */
  readonly idleIntake_psi?: number
  /** Set of its intake relief: 10 psi above what stands there when the flow stops, never above the hose's working pressure. */
  readonly intakeRelief_psi?: number
}
