'use client'

import { useEffect, useState } from 'react'
import type { Evidence } from '@/lib/evidence'
import type { DraftSite, EditBody, Source, TerrainSet } from '@/lib/plan'
import type { GroundHeight } from '@/lib/terrain'
import { formatQuantity, say, sayIssue, type UnitSystem } from '../_text'
import '../_text/areas/survey'
import { Button } from '../_ui/button'
import { useUnitSystem } from '../_ui/unit-system-context'
import { getGround } from '../_worker/ground/get-ground'
import { liftFromGround, type GroundLift } from './lift-from-ground'
import styles from './survey.module.css'
import { useSurvey } from './survey-context'

type Ends = readonly [bank: GroundHeight | undefined, surface: GroundHeight | undefined]

/**
 * Bank and water surface of a draft site as the district's elevation has them, for where nobody has measured a lift or
 * entered the heights. It says how far the lift so found may be off, and promises nothing where that is more than the lift.
 */
export function ReadElevation({ site, source, terrain }: { site: DraftSite; source: Source; terrain: TerrainSet }) {
  const { edit } = useSurvey()
  const [system] = useUnitSystem()
  const { ends, wrong } = useEnds(site, source, terrain, system)
  if (wrong !== undefined) return <p className={styles.wrong}>{wrong}</p>
  if (!ends) return null
  const found = liftFromGround(site, ends[0], ends[1])
  if (!found) return <p className={styles.quiet}>{say('survey.read.none')}</p>
  const read = () => {
    edit([
      setHeight('draftSites', site.id, 'bankElevation_ft', found.bank, terrain),
      setHeight('sources', source.id, 'surfaceElevation_ft', found.surface, terrain),
    ], say('survey.read'))
  }
  return (
    <div className={styles.computed}>
      <p className={styles.how}>{say('survey.read.found', wordsOf(found, system))}</p>
      <p className={found.isPromise ? styles.how : styles.attention}>{say(found.isPromise ? 'survey.read.doubt' : 'survey.read.no-promise', wordsOf(found, system))}</p>
      {found.isPromise && <Button size="s" label={say('survey.read')} onClick={read} />}
    </div>
  )
}

const wordsOf = ({ bank, surface, lift_ft, doubt_ft }: GroundLift, system: UnitSystem) => {
  const feet = (value_ft: number) => formatQuantity(value_ft, 'ft', system, { digits: 0 })
  return { bank: feet(bank.height_ft), surface: feet(surface.height_ft), lift: feet(lift_ft), doubt: feet(Math.ceil(doubt_ft)) }
}

function setHeight(collection: 'draftSites' | 'sources', id: string, field: string, { height_ft, doubt_ft }: GroundHeight, { name }: TerrainSet): EditBody {
  const value = Math.round(height_ft * 10) / 10
  const evidence: Evidence = { mark: 'computed', source: say('survey.read.source', { file: name }), spreadShare: doubt_ft / Math.abs(value) }
  return { kind: 'setFields', collection, id, set: { [field]: value }, evidence: { [field]: evidence } }
}

function useEnds(site: DraftSite, source: Source, { hash, verticalDoubt_ft, doubtBasis }: TerrainSet, system: UnitSystem): { ends?: Ends; wrong?: string } {
  const ask = JSON.stringify([{ hash, verticalDoubt_ft, doubtBasis }, [site.point, source.point]])
  const [state, setState] = useState<{ ask: string; ends?: Ends; wrong?: string }>()
  useEffect(() => {
    let isGone = false
    const [terrain, points] = JSON.parse(ask) as Parameters<ReturnType<typeof getGround>['heights']>
    getGround().heights(terrain, points).then((found) => {
      if (isGone) return
      setState('code' in found ? { ask, wrong: sayIssue(found, () => undefined, system) } : { ask, ends: [found[0], found[1]] })
    }, (error: unknown) => { if (!isGone) setState({ ask, wrong: say('issue.terrain-unreachable', { reason: String(error) }) }) })
    return () => { isGone = true }
  }, [ask, system])
  return state?.ask === ask ? state : {}
}
