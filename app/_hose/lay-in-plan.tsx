'use client'

import { FIRE_GROUND } from '@/lib/supply'
import type { Lay } from '@/lib/plan'
import { usePlanBoard } from '../_plan/plan-context'
import { formatFrom, formatGiven, formatTime, say } from '../_text'
import '../_text/areas/hose'
import { FigureTile } from '../_ui/figure-tile'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './hose.module.css'

/** What a lay does for the plan it belongs to: what it brings where, from when, and the flow held before and after. */
export function LayInPlan({ lay }: { lay: Lay }) {
  const { plan, result, names } = usePlanBoard()
  const [system] = useUnitSystem()
  const part = result?.lays?.find(({ id }) => id === lay.id)
  const held = (value: number) => formatGiven(value, system, result?.needed_gpm)
  const end = lay.toId === FIRE_GROUND ? 'fireGround' : plan.dumpSites.some(({ id }) => id === lay.toId) ? 'dumpSite' : 'fillSite'
  const later = result?.laterFlows?.find(({ layIds }) => layIds.includes(lay.id))
  return (
    <section className={styles.sheet} aria-label={say('hose.part')}>
      <h3 className={styles.subtitle}>{say('hose.part')}</h3>
      {!part && <p className={styles.quiet}>{say(result ? 'hose.part.none' : 'hose.part.pending')}</p>}
      {part && result && (
        <div className={styles.tiles}>
          <FigureTile label={say('hose.part.flow')} value={formatGiven(part.flow_gpm, system)} note={say(`hose.part.end.${end}`, { name: names(lay.toId) ?? say('issue.unnamed') })} />
          <FigureTile label={say('hose.part.start')} value={formatTime(part.start_s)} note={say('hose.part.dispatch')} />
          <FigureTile label={say('hose.part.ready')} value={formatFrom(part.ready_s)} note={say('hose.part.dispatch')} />
          {result.sustainable_gpm !== null && (
            <FigureTile
              label={say('hose.part.before')} value={held(result.sustainable_gpm)} look="water"
              note={result.supplyReady_s === null ? undefined : say('hose.part.before.note', { time: formatFrom(result.supplyReady_s) })}
            />
          )}
          {later && <FigureTile label={say('hose.part.later')} value={held(later.flow_gpm)} look="water" note={say('hose.part.later.note', { time: formatFrom(later.from_s) })} />}
        </div>
      )}
    </section>
  )
}
