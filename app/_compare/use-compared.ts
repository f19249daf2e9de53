'use client'

import { wrap } from 'comlink'
import { useEffect, useState } from 'react'
import type { Bundle, District, Plan } from '@/lib/plan'
import type { DependableFlow } from '@/lib/supply'
import { bundleFromDocuments } from '../_client'
import { getDoubtPool } from '../_worker/get-doubt-pool'
import { guardOf } from '../_worker/guard-worker'
import type { ComparedAnswer, CompareService } from './compare.worker'

let shared: ((bundle: Bundle) => Promise<ComparedAnswer>) | undefined

function startAnswer(): (bundle: Bundle) => Promise<ComparedAnswer> {
  const worker = new Worker(new URL('./compare.worker.ts', import.meta.url))
  const service = wrap<CompareService>(worker)
  const guard = guardOf(worker)
  return (bundle) => guard(service.answer(bundle))
}

const bundles = new WeakMap<District, WeakMap<Plan, Bundle>>()
const answers = new WeakMap<Bundle, Promise<ComparedAnswer>>()
const dependables = new WeakMap<Bundle, DependableFlow>()

/** The same bundle for the same documents, so that a change of one plan asks for that one only. */
function bundleOf(district: District, plan: Plan): Bundle {
  const ofDistrict = bundles.get(district) ?? new WeakMap<Plan, Bundle>()
  bundles.set(district, ofDistrict)
  const bundle = ofDistrict.get(plan) ?? bundleFromDocuments(district, plan)
  ofDistrict.set(plan, bundle)
  return bundle
}

function answerOf(bundle: Bundle): Promise<ComparedAnswer> {
  shared ??= startAnswer()
  const asked = answers.get(bundle) ?? shared(bundle)
  answers.set(bundle, asked)
  return asked
}

/** The dependable flow, by the same nights as on the plan's own pages; undefined where the work was ended or cannot start. */
async function dependableOf({ bundle, result }: ComparedAnswer, signal: AbortSignal): Promise<DependableFlow | undefined> {
  const known = dependables.get(bundle)
  if (known || result.sustainable_gpm === null) return known
  const doubt = await getDoubtPool().whole(bundle, { signal }).catch(() => undefined)
  if (doubt) dependables.set(bundle, doubt.dependable)
  return doubt?.dependable
}

/** `isDoubting`: its nights are still being worked through, and its dependable flow comes later. */
export type Compared = { answer?: ComparedAnswer; failure?: string; isDoubting?: boolean }

/**
 * The answers of several plans, by plan id, as they come, the dependable flow of each after it; an older answer of a plan
 * stays until its next.
 *
 * @param plans the same array until one of them changes
 */
export function useCompared(district: District | undefined, plans: readonly Plan[]): ReadonlyMap<string, Compared> {
  const [found, setFound] = useState<ReadonlyMap<string, Compared>>(new Map())
  useEffect(() => {
    if (!district) return
    let isGone = false
    const ending = new AbortController()
    for (const plan of plans) {
      const keep = (one: Compared) => { if (!isGone) setFound((before) => new Map(before).set(plan.id, one)) }
      answerOf(bundleOf(district, plan)).then(async (answer) => {
        keep({ answer, isDoubting: answer.result.sustainable_gpm !== null })
        const dependable = await dependableOf(answer, ending.signal)
        keep({ answer: dependable ? { ...answer, result: { ...answer.result, dependable } } : answer })
      }, (error: unknown) => { keep({ failure: String(error) }) })
    }
    return () => {
      isGone = true
      ending.abort()
    }
  }, [district, plans])
  return found
}
