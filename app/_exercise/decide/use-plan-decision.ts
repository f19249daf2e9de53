'use client'

import { useCallback, useState } from 'react'
import type { EditBody, Lay } from '@/lib/plan'
import { findRoadWay } from '../../_hose/use-hose-study'
import { say } from '../../_text'
import '../../_text/areas/exercise'
import { getGround } from '../../_worker/ground/get-ground'
import { getReferee } from '../../_worker/referee'
import type { ExerciseDesk } from '../use-exercise'

/**
 * Decisions that change the plan: the ways that it drives then are found first, round what is closed, and the ground under a new lay.
 *
 * @returns what is being done, and a way to do it: true once it has taken effect
 */
export function usePlanDecision(desk: ExerciseDesk): { said: string | undefined; decidePlan: (edits: readonly EditBody[], by: string, lay?: Lay) => Promise<boolean>; decideLay: (lay: Lay, by: string) => Promise<boolean> } {
  const [said, setSaid] = useState<string>()
  const { session, decide } = desk

  const decidePlan = useCallback(async (edits: readonly EditBody[], by: string, lay?: Lay) => {
    if (!session || edits.length === 0) return false
    setSaid(say('exercise.decide.finding'))
    const { bundle, conditions } = session.now.world
    try {
      const heights = lay && bundle.district.terrain ? await getGround().layHeights(bundle.district, [lay]) : []
      const change = await getReferee().change(bundle, edits, conditions.closed)
      setSaid(change ? undefined : say('exercise.decide.no-way'))
      return change !== undefined && decide(heights.length > 0 ? { ...change, heights } : change, by)
    } catch {
      setSaid(say('exercise.decide.no-way'))
      return false
    }
  }, [session, decide])

  const decideLay = useCallback(async (lay: Lay, by: string) => {
    if (!session) return false
    setSaid(say('exercise.decide.finding'))
    const { district, plan } = session.now.world.bundle
    const isThere = plan.hoseLays?.some(({ id }) => id === lay.id) ?? false
    const found = isThere ? lay.points : await findRoadWay({ district, plan: { ...plan, hoseLays: [lay] }, layId: lay.id }).catch(() => undefined)
    // Where no road leads, the hose goes straight over the ground.
    const laid = Array.isArray(found) && found.length > 1 && !('code' in found) ? { ...lay, points: found as Lay['points'] } : lay
    return decidePlan([{ kind: 'addItem', collection: 'hoseLays', item: laid }], by, laid)
  }, [session, decidePlan])

  return { said, decidePlan, decideLay }
}
