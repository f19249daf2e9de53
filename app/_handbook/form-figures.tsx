import type { HandbookComparison } from '@/lib/supply'
import { formatGiven, formatQuantity, say } from '../_text'
import '../_text/areas/handbook'
import { FigureTile } from '../_ui/figure-tile'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './handbook.module.css'

/** The forms and the simulation, one figure each. */
export function FormFigures({ comparison }: { comparison: HandbookComparison }) {
  const [system] = useUnitSystem()
  const flow = (gpm: number) => formatGiven(gpm, system)
  return (
    <section className={styles.part} aria-label={say('handbook.forms')}>
      <h3 className={styles.subtitle}>{say('handbook.forms')}</h3>
      <div className={styles.tiles}>
        <FigureTile label={say('handbook.form.rating')} value={flow(comparison.rating_gpm)} note={say('handbook.form.rating.note')} />
        <FigureTile label={say('handbook.form.annex')} value={flow(comparison.annex_gpm)} note={say('handbook.form.annex.note')} />
        <FigureTile label={say('handbook.form.own')} value={flow(comparison.own_gpm)} note={say('handbook.form.own.note')} />
        <FigureTile label={say('handbook.form.hauled')} value={flow(comparison.hauled_gpm)} note={say('handbook.form.hauled.note')} />
        <FigureTile label={say('handbook.form.sustained')} value={flow(comparison.sustainable_gpm)} note={say('handbook.form.sustained.note')} look="water" />
      </div>
      <p className={styles.small}>{say('handbook.conflict', { speed: formatQuantity(comparison.average_mph, 'mph', system) })}</p>
      <p className={styles.small}>{say('handbook.form.rating.source')}</p>
      <p className={styles.small}>{say('handbook.form.annex.source')}</p>
    </section>
  )
}
