import type { SheetTrial } from '@/lib/supply'
import { trialToAddress } from './sheet-address'

export type DraftLinkTarget = {
  readonly districtId: string
  readonly draftSiteId: string
  /** The pumper to begin with. */
  readonly pumperId?: string | undefined
  /** Plan whose pumper, season, needed flow and set-up the sheet begins with. */
  readonly planId?: string | undefined
  /** What is tried: it goes before the plan's. */
  readonly trial?: SheetTrial | undefined
}

const base = ({ districtId, draftSiteId }: DraftLinkTarget): string => `/district/${encodeURIComponent(districtId)}/draft/${encodeURIComponent(draftSiteId)}`

const query = (values: Readonly<Record<string, string | undefined>>): string => {
  const parts = Object.entries(values).flatMap(([key, value]) => (value === undefined ? [] : [`${key}=${encodeURIComponent(value)}`]))
  return parts.length === 0 ? '' : `?${parts.join('&')}`
}

const asked = ({ pumperId, planId, trial = {} }: DraftLinkTarget): string => query({ pumper: pumperId, plan: planId, ...trialToAddress(trial) })

/** Address of a draft site's sheet. */
export const draftHref = (target: DraftLinkTarget): string => base(target) + asked(target)

/** Address of the back-up prime card of a pumper at a draft site. */
export const backUpCardHref = (target: DraftLinkTarget): string => `${base(target)}/card${asked(target)}`

/**
 * Address of the prime drill with this pumper at this site.
 *
 * @param played the trouble of an exercise that it is played for: how it went is then taken back there
 */
export const drillHref = ({ districtId, draftSiteId, pumperId }: DraftLinkTarget, played?: { readonly exerciseId: string; readonly factId: string }): string =>
  `/district/${encodeURIComponent(districtId)}/drill${query({ pumper: pumperId, site: draftSiteId, exercise: played?.exerciseId, fact: played?.factId })}`
