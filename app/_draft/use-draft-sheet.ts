'use client'

import { useMemo, useState } from 'react'
import type { District, DraftingPump, DraftSite, Plan } from '@/lib/plan'
import { findDraftSheet, findHazardFlow_gpm, type DraftSheet, type SheetTrial } from '@/lib/supply'
import { useDistrict, usePlan } from '../_client'
import type { NameOf } from '../_text'

export type DraftBoard = {
  readonly status: 'loading' | 'missing' | 'ready'
  readonly district?: District | undefined
  readonly draftSite?: DraftSite | undefined
  readonly pumps: readonly DraftingPump[]
  readonly pump?: DraftingPump | undefined
  readonly sheet?: DraftSheet | undefined
  readonly trial: SheetTrial
  /** What a plan asks at the fire ground, where the sheet was opened from one. */
  readonly planned_gpm?: number | undefined
  readonly names: NameOf
  readonly choosePump: (id: string | undefined) => void
  /** Changes some of what is tried; undefined takes a trial back. */
  readonly attempt: (part: { [F in keyof SheetTrial]?: SheetTrial[F] | undefined }) => void
  readonly reset: () => void
}

/** A draft site, the pumper at it and what is tried there, worked out anew at every change. */
export function useDraftSheet({ districtId, draftSiteId, pumperId, planId, season }: { districtId: string; draftSiteId: string; pumperId?: string | undefined; planId?: string | undefined; season?: string | undefined }): DraftBoard {
  const view = useDistrict(districtId)
  const plan = usePlan(planId).doc
  const district = view.doc
  const draftSite = district?.draftSites.find(({ id }) => id === draftSiteId)
  const pumps = useMemo(() => (district?.apparatus ?? []).filter((one): one is DraftingPump => one.kind !== 'tender'), [district])
  const [chosenId, setChosenId] = useState(pumperId)
  const [tried, setTried] = useState<SheetTrial>({})
  const begun = useMemo(() => trialOf(plan, draftSiteId, season), [plan, draftSiteId, season])
  const trial = useMemo(() => ({ ...begun.trial, ...tried }), [begun, tried])
  const wantedId = chosenId ?? begun.pumperId
  const pump = pumps.find(({ id }) => id === wantedId) ?? pumps.find(({ rated_gpm }) => rated_gpm !== undefined)
  const sheet = useMemo(() => (district && draftSite && pump ? findDraftSheet(district, draftSite, pump, trial) : undefined), [district, draftSite, pump, trial])
  const names = useMemo(() => namesOf(district), [district])
  const planned_gpm = useMemo(() => flowOf(plan, district), [plan, district])
  return {
    status: draftSite ? 'ready' : view.status === 'loading' ? 'loading' : 'missing',
    district, draftSite, pumps, pump, sheet, trial, planned_gpm, names,
    choosePump: setChosenId,
    attempt: (part) => { setTried((before) => withPart(before, part)) },
    reset: () => { setTried({}) },
  }
}

function withPart(before: SheetTrial, part: { [F in keyof SheetTrial]?: SheetTrial[F] | undefined }): SheetTrial {
  return Object.fromEntries(Object.entries({ ...before, ...part }).filter(([, value]) => value !== undefined)) as SheetTrial
}

function trialOf(plan: Plan | undefined, draftSiteId: string, asked: string | undefined): { trial: SheetTrial; pumperId?: string | undefined } {
  const fill = plan?.fillSites.find((site) => site.draftSiteId === draftSiteId)
  const season = asked === 'dry' || asked === 'drought' ? asked : plan?.season
  return {
    trial: { ...(season && { season }), ...(fill?.suction && { suction: fill.suction }), ...(fill?.lift_ft !== undefined && { lift_ft: fill.lift_ft }) },
    pumperId: fill?.pumperId,
  }
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
