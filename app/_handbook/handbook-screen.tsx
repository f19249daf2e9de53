'use client'

import { PlanStudy, type Study } from '../_plan/plan-study'
import { say } from '../_text'
import '../_text/areas/handbook'
import { Button } from '../_ui/button'
import { Caution } from '../_ui/caution'
import { EmptyState } from '../_ui/empty-state'
import { CreditList } from './credit-list'
import { CriterionForm } from './criterion-form'
import { FormFigures } from './form-figures'
import shared from '../_look/shared.module.css'
import styles from './handbook.module.css'
import { StepTable } from './step-table'
import { TenderTerms } from './tender-terms'
import { useHandbook } from './use-handbook'

/** A plan by the handbook: the forms beside the simulation, the officer's criterion, what is asked of a steady supply. */
export function HandbookScreen({ districtId, planId }: { districtId: string; planId: string }) {
  return <PlanStudy districtId={districtId} planId={planId} page="handbook">{(study) => <Handbook {...study} />}</PlanStudy>
}

function Handbook({ board, bundle }: Study) {
  const { study, failure, isPending } = useHandbook(bundle, board.result?.dependable?.flow_gpm)
  const { names } = board
  if (failure) return <EmptyState title={say('handbook.failed', { reason: failure })} />
  return (
    <div className={styles.page} aria-busy={isPending}>
      <header className={styles.head}>
        <div>
          <h2 className={styles.title}>{say('handbook.title')}</h2>
          <p className={styles.intro}>{say('handbook.intro')}</p>
        </div>
        <Button label={say('handbook.print')} icon="print" size="s" className={shared.screenOnly} onClick={() => { window.print() }} />
      </header>
      <p className={styles.pending} role="status">{isPending ? say('handbook.working') : ''}</p>
      <div className={styles.columns}>
        <div className={styles.column}>
          {study?.comparison && (
            <>
              <FormFigures comparison={study.comparison} />
              <StepTable comparison={study.comparison} />
              <TenderTerms comparison={study.comparison} names={names} />
            </>
          )}
          {study && !study.comparison && <EmptyState title={say('handbook.blocked')} text={say('handbook.blocked.text')} />}
        </div>
        <div className={styles.column}>
          <CriterionForm answer={study?.criterion} isPending={isPending} names={names} />
          {study && <CreditList credit={study.credit} names={names} district={board.district} plan={board.plan} />}
        </div>
      </div>
      <Caution kinds={['credit', 'planning-aid']} />
    </div>
  )
}
