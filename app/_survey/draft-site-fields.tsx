'use client'

import type { DraftSite } from '@/lib/plan'
import { defaults } from '@/lib/supply'
import { useItem } from '../_fields/item-context'
import { ItemChoice, ItemCount, ItemQuantity, ItemText } from '../_fields/item-inputs'
import { PartFields } from '../_fields/part-fields'
import { draftHref } from '../_links/draft-href'
import { formatQuantity, say, sayIssue } from '../_text'
import '../_text/areas/survey'
import { ButtonLink } from '../_ui/button-link'
import { Caution } from '../_ui/caution'
import { useUnitSystem } from '../_ui/unit-system-context'
import { ComputedRow } from './computed-row'
import { findLiftByElevation_ft } from './known-water'
import { canReadGround } from './lift-from-ground'
import { ReadElevation } from './read-elevation'
import styles from './survey.module.css'
import { useSurvey } from './survey-context'
import { useSiteFar } from './use-site-far'

/** A dry hydrant begins as the commonest: 6 in pipe, 50 ft of it. */
const DRY_HYDRANT = { pipe_in: 6, pipe_ft: 50 }

/** The bank spot where a pumper stands. */
export function DraftSiteFields({ site }: { site: DraftSite }) {
  const { district } = useSurvey()
  const { set } = useItem()
  const [system] = useUnitSystem()
  const source = district.sources.find(({ id }) => id === site.sourceId)
  const computed_ft = findLiftByElevation_ft(site, source)
  const far = useSiteFar(district, site)
  return (
    <>
      <ItemChoice field="sourceId" label={say('survey.on-source')} none={say('survey.on-source.none')} choices={district.sources.map(({ id, name }) => ({ value: id as string, label: name }))} />
      {far && <p className={styles.attention} role="status">{sayIssue(far, (id) => [site, ...district.sources].find((one) => one.id === id)?.name, system)}</p>}
      <ItemQuantity field="lift_ft" hint={say('survey.lift.hint')} standIn={computed_ft === undefined ? defaults.lift_ft : { value: computed_ft, mark: 'computed', source: say('survey.lift.how') }} />
      <ItemQuantity field="bankElevation_ft" />
      <ItemQuantity field="intakeHeight_ft" standIn={defaults.intakeHeight_ft} />
      {district.terrain && canReadGround(site, source) && <ReadElevation site={site} source={source} terrain={district.terrain} />}
      {computed_ft !== undefined && (
        <ComputedRow
          label={say('survey.lift')} value={formatQuantity(computed_ft, 'ft', system)} how={say('survey.lift.how')}
          {...(site.lift_ft !== undefined && { onUse: () => { set({ lift_ft: undefined }, { lift_ft: undefined }, say('survey.use-figure')) } })}
        />
      )}
      <ItemQuantity field="waterDepth_ft" />
      <ItemQuantity field="strainerCover_ft" />
      <ItemQuantity field="hoseRun_ft" />
      <ItemChoice field="ground" none={say('survey.ground.none')} />
      <ItemText field="turnRound" isLong />
      <PartFields label={say('survey.dry-hydrant')} field="dryHydrant" part={site.dryHydrant} base={DRY_HYDRANT}>
        <ItemQuantity field="pipe_in" />
        <ItemQuantity field="pipe_ft" />
        <ItemCount field="elbow90Count" standIn={0} />
        <ItemCount field="elbow45Count" standIn={0} />
      </PartFields>
      <ButtonLink size="s" iconAfter="arrowRight" label={say('survey.draft-sheet')} href={draftHref({ districtId: district.id, draftSiteId: site.id })} />
      <Caution kinds={['banks']} />
    </>
  )
}
