'use client'

import { useMemo, useState } from 'react'
import { distanceM } from '@/lib/geo'
import { FIRE_GROUND, findPlace } from '@/lib/supply'
import { milesFromMetres } from '@/lib/units'
import { usePlanBoard } from '../_plan/plan-context'
import type { Study } from '../_plan/plan-study'
import { formatQuantity, say } from '../_text'
import '../_text/areas/hose'
import { Button } from '../_ui/button'
import { CheckField } from '../_ui/check-field'
import { EmptyState } from '../_ui/empty-state'
import { Fold } from '../_ui/fold'
import { joinClasses } from '../_ui/join-classes'
import { ProgressBar } from '../_ui/progress-bar'
import { useUnitSystem } from '../_ui/unit-system-context'
import shared from '../_look/shared.module.css'
import styles from './hose.module.css'
import type { LayEnd } from './lay-ends'
import { useWheels } from './use-wheels'
import { WheelsAnswer } from './wheels-answer'

/** Sources offered, and those taken unless told otherwise: the nearest. */
const OFFERED = 8
const TAKEN = 2

/** Relay or shuttle: which water and which equipment may be used, and what each way of bringing it comes to. */
export function WheelsPart({ bundle, begins }: { bundle: Study['bundle']; begins: readonly LayEnd[] }) {
  const { district, plan } = usePlanBoard()
  const [system] = useUnitSystem()
  const { state, doneShare, found, failure, compare, stop } = useWheels()
  const fire = findPlace({ district, plan }, FIRE_GROUND)
  const near = useMemo(() => (fire ? begins.map((one) => ({ ...one, far_mi: milesFromMetres(distanceM(one.point, fire)) })).sort((a, b) => a.far_mi - b.far_mi).slice(0, OFFERED) : []), [begins, fire])
  const [chosen, setChosen] = useState<ReadonlySet<string>>()
  const [home, setHome] = useState<ReadonlySet<string>>(new Set())
  const taken = chosen ?? new Set(near.slice(0, TAKEN).map(({ id }) => id))
  const units = district.apparatus.filter(({ kind, id }) => kind !== 'portablePump' && id !== plan.firstDueId)
  const ask = () => { if (bundle) compare({ bundle, fromIds: [...taken], leftOut: [...home] }) }
  return (
    <section className={styles.sheet} aria-label={say('hose.wheels')}>
      <h3 className={styles.subtitle}>{say('hose.wheels')}</h3>
      <p className={styles.quiet}>{say('hose.wheels.intro')}</p>
      {!fire && <p className={styles.quiet}>{say('hose.wheels.no-fire')}</p>}
      {fire && (
        <div className={joinClasses(styles.asks, shared.screenOnly)}>
          <fieldset className={styles.part}>
            <legend className={styles.legend}>{say('hose.wheels.from')}</legend>
            {near.map(({ id, name, far_mi }) => (
              <CheckField key={id} label={name} hint={say('hose.wheels.from.far', { distance: formatQuantity(far_mi, 'mi', system) })} isChecked={taken.has(id)} onCommit={(isIn) => { setChosen(toggled(taken, id, isIn)) }} />
            ))}
          </fieldset>
          <Fold title={say('hose.wheels.home')} note={home.size === 0 ? say('hose.wheels.home.none') : say('hose.wheels.home.count', { count: home.size })}>
            <div className={styles.checks}>
              {units.map(({ id, name }) => <CheckField key={id} label={name} isChecked={home.has(id)} onCommit={(isIn) => { setHome(toggled(home, id, isIn)) }} />)}
            </div>
          </Fold>
          {state === 'working'
            ? <ProgressBar label={say('hose.wheels.working')} share={doneShare} onCancel={stop} />
            : <Button look="primary" label={say(found ? 'hose.wheels.again' : 'hose.wheels.start')} disabled={taken.size === 0 || !bundle} onClick={ask} />}
          <p className={styles.pending} role="status">{state === 'stopped' ? say('hose.wheels.stopped') : ''}</p>
        </div>
      )}
      {failure && state === 'failed' && <EmptyState title={say('hose.wheels.failed', { reason: failure })} />}
      {found && <WheelsAnswer found={found} />}
    </section>
  )
}

function toggled(set: ReadonlySet<string>, id: string, isIn: boolean): ReadonlySet<string> {
  const next = new Set(set)
  if (isIn) next.add(id)
  else next.delete(id)
  return next
}
