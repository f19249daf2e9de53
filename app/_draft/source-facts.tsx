'use client'

import { useSyncExternalStore } from 'react'
import type { Source } from '@/lib/plan'
import type { DraftSheet } from '@/lib/supply'
import { ItemFields } from '../_fields/item-context'
import { ItemQuantity } from '../_fields/item-inputs'
import { formatQuantity, inUnits, localDay, say } from '../_text'
import '../_text/areas/draft'
import { formatDay } from '../_text/format-day'
import { Icon } from '../_look/icon'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './draft.module.css'

const fieldsByKind: Readonly<Record<Source['kind'], readonly string[]>> = {
  pond: ['surface_sqft', 'usableDepth_ft', 'usable_gal', 'inflow_gpm', 'seasonalDrop_ft', 'droughtDrop_ft'],
  lake: ['surface_sqft', 'usableDepth_ft', 'usable_gal', 'inflow_gpm', 'seasonalDrop_ft', 'droughtDrop_ft'],
  dryHydrant: ['surface_sqft', 'usableDepth_ft', 'usable_gal', 'inflow_gpm', 'seasonalDrop_ft', 'droughtDrop_ft'],
  cistern: ['usable_gal', 'inflow_gpm'],
  stream: ['streamWidth_ft', 'streamDepth_ft', 'floatReach_ft', 'float_s', 'seasonalDrop_ft', 'droughtDrop_ft'],
  pressureHydrant: ['static_psi', 'residual_psi', 'test_gpm'],
}

const never = () => () => undefined

/** What somebody has written down of a source: its measures, when it was looked at, how to get there. */
export function SourceFacts({ sheet: { district, draftSite }, source }: { sheet: DraftSheet; source: Source }) {
  const [system] = useUnitSystem()
  // The day is the reader's: unknown while the page is made on the server.
  const today = useSyncExternalStore(never, () => localDay(), () => undefined)
  const isOverdue = today !== undefined && source.inspectionDue !== undefined && source.inspectionDue < today
  const facts = [
    { key: 'tested', value: source.testedOn && formatDay(source.testedOn) },
    { key: 'certified', value: source.certifiedOn && formatDay(source.certifiedOn) },
    { key: 'inspection', value: source.inspectionDue && formatDay(source.inspectionDue) },
    { key: 'level', value: source.surfaceElevation_ft === undefined ? undefined : formatQuantity(source.surfaceElevation_ft, 'ft', system) },
    { key: 'access', value: source.access },
    { key: 'turn', value: draftSite.turnRound },
    { key: 'ground', value: draftSite.ground && say(`choice.ground.${draftSite.ground}`) },
    { key: 'notes', value: [source.notes, draftSite.notes].filter(Boolean).join(' ') || undefined },
  ] as const
  return (
    <>
      <dl className={styles.facts}>
        {facts.map(({ key, value }) => (
          <div key={key}>
            <dt>{say(`draft.fact.${key}`)}</dt>
            <dd>
              {value ?? say('quantity.unknown')}
              {key === 'inspection' && isOverdue && <span className={styles.overdue}><Icon name="warn" size={14} />{say('draft.fact.overdue')}</span>}
            </dd>
          </div>
        ))}
      </dl>
      <h4 className={styles.subtitle}>{say('draft.source.measures')}</h4>
      <div className={styles.fields}>
        <ItemFields docId={district.id} docKind="district" collection="sources" item={source}>
          {fieldsByKind[source.kind].map((field) => <ItemQuantity key={field} field={field} {...(field === 'float_s' && { hint: say('draft.source.float-hint') })} />)}
        </ItemFields>
      </div>
      {source.kind === 'stream' && <p className={styles.quiet}>{inUnits(say('draft.source.float'), system)}</p>}
      {source.kind === 'pressureHydrant' && <p className={styles.quiet}>{inUnits(say('draft.source.two-point'), system)}</p>}
    </>
  )
}
