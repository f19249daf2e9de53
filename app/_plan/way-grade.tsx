'use client'

import { useEffect, useState } from 'react'
import type { Leg } from '@/lib/plan'
import type { Grade } from '@/lib/terrain'
import { formatQuantity, formatShare, say } from '../_text'
import { useUnitSystem } from '../_ui/unit-system-context'
import { getGround } from '../_worker/ground/get-ground'
import type { SteepestGrades } from '../_worker/ground/steepest-grades'
import { usePlanBoard } from './plan-context'
import styles from './planner.module.css'

/** How steep a road is by the elevation under it, up and down as it is driven, each with its doubt. */
export function WayGrade({ legKey }: { legKey: string }) {
  const { district, legs } = usePlanBoard()
  const [system] = useUnitSystem()
  const { terrain } = district
  const leg = legs?.find((one): one is Leg => one.key === legKey && one.by === 'routed')
  const [found, setFound] = useState<{ leg: Leg; grades: SteepestGrades }>()
  useEffect(() => {
    if (!terrain || !leg || leg.path.length < 2) return
    let isGone = false
    getGround().grades(terrain, leg.path).then((grades) => { if (!isGone && !('code' in grades)) setFound({ leg, grades }) }, () => undefined)
    return () => { isGone = true }
  }, [terrain, leg])
  if (!found || found.leg !== leg) return null
  const { over_ft, up, down } = found.grades
  const words = (grade: Grade | undefined) => (grade ? say('plan.way.grade.of', { grade: formatShare(Math.abs(grade.gradeShare)), doubt: formatShare(grade.doubtShare) }) : say('plan.way.grade.none'))
  return <p className={styles.quiet}>{say('plan.way.grade', { up: words(up), down: words(down), over: formatQuantity(over_ft, 'ft', system) })}</p>
}
