'use client'

import type { DrillPumper, DrillSite } from '@/lib/priming/drill'
import type { Unit } from '@/lib/units'
import { say } from '../_text'
import '../_text/areas/drill'
import { Button } from '../_ui/button'
import { QuantityField } from '../_ui/quantity-field'
import styles from './drill.module.css'

export type Figures = { readonly pumper: DrillPumper; readonly site: DrillSite }

const siteFields = [
  { field: 'lift_ft', unit: 'ft', min: 0, max: 30, standIn: 8 }, { field: 'depth_ft', unit: 'ft', min: 0, max: 40, standIn: 4 },
  { field: 'altitude_ft', unit: 'ft', min: -1000, max: 14_000, standIn: 0 }, { field: 'water_degF', unit: 'degF', min: 32, max: 120, standIn: 60 },
] as const satisfies readonly { field: keyof DrillSite; unit: Unit; min: number; max: number; standIn: number }[]

const pumperFields = [
  { field: 'rated_gpm', unit: 'gpm', min: 250, max: 3000, standIn: 1250 }, { field: 'tank_gal', unit: 'gal', min: 100, max: 5000, standIn: 1000 },
  { field: 'tankToPump_gpm', unit: 'gpm', min: 50, max: 2000, standIn: 500 }, { field: 'tankToPumpDrop_ft', unit: 'ft', min: 0.5, max: 40, standIn: 14.8 },
  { field: 'tankFill_in', unit: 'in', min: 0.75, max: 4, standIn: 2 }, { field: 'tankFill_gpm', unit: 'gpm', min: 20, max: 1500, standIn: 543 }, { field: 'suction_in', unit: 'in', min: 2.5, max: 8, standIn: 5 },
  { field: 'suction_ft', unit: 'ft', min: 5, max: 100, standIn: 20 }, { field: 'primer_gpm', unit: 'gpm', min: 0, max: 500, standIn: 140 },
] as const satisfies readonly { field: keyof DrillPumper; unit: Unit; min: number; max: number; standIn: number }[]

export type PumperFieldsProps = { figures: Figures; problem: string | undefined; onChange: (figures: Figures) => void; onReset: () => void }

/** The pumper and the site of the drill, to be overwritten with one's own. Nothing typed here leaves the drill. */
export function PumperFields({ figures, problem, onChange, onReset }: PumperFieldsProps) {
  return (
    <div className={styles.figures}>
      <p className={styles.quiet}>{say('drill.pumper.hint')}</p>
      {problem !== undefined && <p role="alert" className={styles.problem}>{say('drill.pumper.bad', { reason: problem })}</p>}
      {siteFields.map(({ field, unit, min, max, standIn }) => (
        <QuantityField key={field} label={say(`drill.field.${field}`)} unit={unit} min={min} max={max} value={figures.site[field]} standIn={{ value: standIn, mark: 'assumed' }}
          hasMark={false} onCommit={({ value }) => { onChange({ ...figures, site: { ...figures.site, [field]: value } }) }} />
      ))}
      {pumperFields.map(({ field, unit, min, max, standIn }) => (
        <QuantityField key={field} label={say(`drill.field.${field}`)} unit={unit} min={min} max={max} value={figures.pumper[field]} standIn={{ value: standIn, mark: 'assumed' }}
          hasMark={false} onCommit={({ value }) => { onChange({ ...figures, pumper: { ...figures.pumper, [field]: value } }) }} />
      ))}
      <Button look="quiet" icon="undo" label={say('drill.pumper.back')} onClick={onReset} />
    </div>
  )
}
