'use client'

import { useMemo, useState } from 'react'
import type { Pumper } from '@/lib/plan'
import { useDistrict } from '../_client'
import { Shell } from '../_frame/shell'
import { say } from '../_text'
import '../_text/areas/drill'
import { ButtonLink } from '../_ui/button-link'
import { ChoiceField } from '../_ui/choice-field'
import { EmptyState } from '../_ui/empty-state'
import { outcomeHref } from '../_links/exercise-href'
import { useAddress } from '../_ui/use-address'
import { findDistrictFigures } from './district-figures'
import styles from './drill.module.css'
import { DrillScreen } from './drill-screen'

/** The prime drill with the pumpers and draft sites of a district. */
export function DistrictDrill({ districtId }: { districtId: string }) {
  const { pumper: pumperId, site: draftSiteId, exercise: exerciseId, fact: factId } = useAddress('pumper', 'site', 'exercise', 'fact')
  const { status, doc: district } = useDistrict(districtId)
  const [chosenPumper, setPumper] = useState(pumperId)
  const [chosenSite, setSite] = useState(draftSiteId)
  const pumpers = useMemo(() => (district?.apparatus ?? []).filter((one): one is Pumper => one.kind === 'pumper' && one.rated_gpm !== undefined), [district])
  const pumper = pumpers.find(({ id }) => id === chosenPumper)
  const site = district?.draftSites.find(({ id }) => id === chosenSite)
  const figures = useMemo(() => (district && pumper && site ? findDistrictFigures(district, site, pumper) : undefined), [district, pumper, site])
  if (!district) {
    return (
      <Shell title={say('drill.title')}>
        <EmptyState title={say(status === 'loading' ? 'drill.district.loading' : status === 'unreachable' ? 'drill.district.unreachable' : 'drill.district.missing')}>
          <ButtonLink href="/drill" label={say('drill.district.plain')} icon="drill" />
        </EmptyState>
      </Shell>
    )
  }
  return (
    <Shell district={{ id: districtId, name: district.name }} screen="drill" title={say('drill.title')}>
      <DrillScreen
        key={figures ? `${pumper?.id} ${site?.id}` : 'plain'}
        {...figures}
        {...(exerciseId !== undefined && factId !== undefined && { backTo: (primed_s: number | undefined) => outcomeHref(districtId, exerciseId, factId, primed_s) })}
        chooser={(
          <section className={styles.chooser}>
            <ChoiceField label={say('drill.choose.pumper')} none={say('drill.choose.none')} value={pumper?.id} choices={pumpers.map(({ id, name }) => ({ value: id, label: name }))} onCommit={setPumper} />
            <ChoiceField label={say('drill.choose.site')} none={say('drill.choose.none')} value={site?.id} choices={district.draftSites.map(({ id, name }) => ({ value: id, label: name }))} onCommit={setSite} />
            <p className={styles.quiet}>{say('drill.choose.hint')}</p>
          </section>
        )}
      />
    </Shell>
  )
}
