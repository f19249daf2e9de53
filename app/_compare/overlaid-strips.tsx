import { chainParts, type SupplyResult } from '@/lib/supply'
import { chainBand, halfOf, partOfLink, STRIP_HEIGHT } from '../_charts/supply-strip'
import { formatGiven, say } from '../_text'
import '../_text/areas/compare'
import { joinClasses } from '../_ui/join-classes'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './overlay.module.css'
import { markOfPlan } from './plan-keys'

type Props = { results: readonly SupplyResult[]; full_gpm: number; chosen: number | undefined }

/** The chains of several plans as outlines over each other, at one scale; the figures stand under each part. */
export function OverlaidStrips({ results, full_gpm, chosen }: Props) {
  const [system] = useUnitSystem()
  const drawn = results.flatMap((result, index) => (result.chain.length === chainParts.length ? [{ result, index }] : []))
  return (
    <div role="group" aria-label={say('compare.overlay.strips')}>
      <svg className={styles.strip} viewBox={`0 0 ${chainParts.length * 100} ${STRIP_HEIGHT}`} preserveAspectRatio="none" aria-hidden="true">
        {drawn.map(({ result, index }) => (
          <path key={result.planId} className={joinClasses(styles.outline, isBack(chosen, index) && styles.back)} d={chainBand(result.chain, (capacity_gpm) => halfOf(capacity_gpm, full_gpm))} strokeDasharray={markOfPlan(index).dash} />
        ))}
      </svg>
      <ol className={styles.parts}>
        {chainParts.map((part, at) => (
          <li key={part} className={styles.column}>
            <span className={styles.part}>{say(`plan.part.${part}`)}</span>
            {drawn.map(({ result: { planId, chain, limitingLink }, index }) => {
              const isLimit = limitingLink !== null && partOfLink[limitingLink.kind] === part
              return (
                <span key={planId} className={joinClasses(styles.value, isLimit && styles.limit, isBack(chosen, index) && styles.back)}>
                  <strong>{markOfPlan(index).letter}</strong> {formatGiven(chain[at]?.capacity_gpm, system)}{isLimit && <span className={styles.limits}> {say('plan.strip.limits')}</span>}
                </span>
              )
            })}
          </li>
        ))}
      </ol>
    </div>
  )
}

/** Another plan is the one looked at. */
export const isBack = (chosen: number | undefined, index: number): boolean => chosen !== undefined && chosen !== index
