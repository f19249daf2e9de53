'use client'

import { useMemo, useState } from 'react'
import type { District, DraftingPump, DraftSite, Plan } from '@/lib/plan'
import { findDraftSheet, findHazardFlow_gpm, type DraftSheet, type SheetTrial } from '@/lib/supply'
import { useDistrict, usePlan, usePlansOf } from '../_client'
import type { DraftLinkTarget } from '../_links/draft-href'
import { trialNames } from '../_links/sheet-address'
import type { NameOf } from '../_text'
import { useAddress } from '../_ui/use-address'
import { sitePumper, type SitePumper } from './site-pumper'
import { trialFromAddress } from './trial-from-address'
import { trialOf } from './trial-of'

export type DraftBoard = {
  readonly status: 'loading' | 'missing' | 'ready'
  readonly district?: District | undefined
  readonly draftSite?: DraftSite | undefined
  readonly pumps: readonly DraftingPump[]
  readonly pump?: DraftingPump | undefined
  /** Why the sheet is for this pumper. */
  readonly pumperFrom: Pick<SitePumper, 'from' | 'planName'>
  readonly sheet?: DraftSheet | undefined
  readonly trial: SheetTrial
  /** This sheet with what is tried on it, for links to it and to its card. */
  readonly here: DraftLinkTarget
  /** What a plan asks at the fire ground, where the sheet was opened from one. */
  readonly planned_gpm?: number | undefined
  readonly names: NameOf
  readonly choosePump: (id: string | undefined) => void
  /** Changes some of what is tried; undefined takes a trial back. */
  readonly attempt: (part: { [F in keyof SheetTrial]?: SheetTrial[F] | undefined }) => void
  readonly reset: () => void
}

/** A draft site, the pumper at it and what is tried there, worked out anew at every change. */
export function useDraftSheet(districtId: string, draftSiteId: string): DraftBoard {
  const { pumper: pumperId, plan: planId, ...address } = useAddress('pumper', 'plan', ...trialNames)
  // As text, so that it is the same thing as long as it says the same.
  const asked = JSON.stringify(trialFromAddress(address))
  const view = useDistrict(districtId)
  const plan = usePlan(planId).doc
  const district = view.doc
  const draftSite = district?.draftSites.find(({ id }) => id === draftSiteId)
  const pumps = useMemo(() => (district?.apparatus ?? []).filter((one): one is DraftingPump => one.kind !== 'tender'), [district])
  const [chosenId, setChosenId] = useState<string>()
  const others = usePlansOf(districtId, pumperId === undefined)
  const [tried, setTried] = useState<SheetTrial>({})
  const begun = useMemo(() => withTried(trialOf(plan, draftSiteId), JSON.parse(asked) as SheetTrial), [plan, draftSiteId, asked])
  const trial = useMemo<SheetTrial>(() => withTried(begun, tried), [begun, tried])
  const { pump, ...pumperFrom } = useMemo(() => sitePumper({ pumps, draftSiteId, askedId: chosenId ?? pumperId, plan, others }), [pumps, draftSiteId, chosenId, pumperId, plan, others])
  const sheet = useMemo(() => (district && draftSite && pump ? findDraftSheet(district, draftSite, pump, trial) : undefined), [district, draftSite, pump, trial])
  const here = useMemo(() => ({ districtId, draftSiteId, pumperId: pump?.id, planId, trial }), [districtId, draftSiteId, pump, planId, trial])
  const names = useMemo(() => namesOf(district), [district])
  const planned_gpm = useMemo(() => flowOf(plan, district), [plan, district])
  return {
    status: draftSite ? 'ready' : view.status === 'loading' ? 'loading' : 'missing',
    district, draftSite, pumps, pump, pumperFrom, sheet, trial, here, planned_gpm, names,
    choosePump: setChosenId,
    attempt: (part) => { setTried((before) => withPart(before, part)) },
    reset: () => { setTried({}) },
  }
}

function withPart(before: SheetTrial, part: { [F in keyof SheetTrial]?: SheetTrial[F] | undefined }): SheetTrial {
  return Object.fromEntries(Object.entries({ ...before, ...part }).filter(([, value]) => value !== undefined)) as SheetTrial
}

/** What is tried in place of what was there; how a lift is known goes with the lift. */
function withTried({ liftEvidence, ...before }: SheetTrial, tried: SheetTrial): SheetTrial {
  const isOther = tried.lift_ft !== undefined && tried.lift_ft !== before.lift_ft
  return { ...before, ...(liftEvidence && !isOther && { liftEvidence }), ...tried }
}

function flowOf(plan: Plan | undefined, district: District | undefined): number | undefined {
  const staged = Math.max(0, ...(plan?.demand ?? []).map(({ flow_gpm }) => flow_gpm))
  return staged > 0 ? staged : findHazardFlow_gpm(district?.hazards.find(({ id }) => id === plan?.hazardId))
}

function namesOf(district: District | undefined): NameOf {
  const known = new Map<string, string>()
  if (district) {
    known.set(district.id, district.name)
    for (const list of [district.sources, district.draftSites, district.apparatus]) for (const { id, name } of list) known.set(id, name)
  }
  return (id) => known.get(id)
}
