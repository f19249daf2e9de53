import type { CompiledPlan } from './compile-plan'

/** What all pumpers at the dump sites together send on; no more reaches the fire ground. [gpm] */
export const pumpCapacity_gpm = ({ dumps }: Pick<CompiledPlan, 'dumps'>): number => dumps.reduce((sum, { pump_gpm }) => sum + pump_gpm, 0)
