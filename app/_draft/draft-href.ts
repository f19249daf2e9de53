export type DraftLinkTarget = {
  readonly districtId: string
  readonly draftSiteId: string
  /** The pumper to begin with. */
  readonly pumperId?: string | undefined
  /** Plan whose season, needed flow and set-up the sheet begins with. */
  readonly planId?: string | undefined
}

const base = ({ districtId, draftSiteId }: DraftLinkTarget): string => `/district/${encodeURIComponent(districtId)}/draft/${encodeURIComponent(draftSiteId)}`

const query = (values: Readonly<Record<string, string | undefined>>): string => {
  const parts = Object.entries(values).flatMap(([key, value]) => (value === undefined ? [] : [`${key}=${encodeURIComponent(value)}`]))
  return parts.length === 0 ? '' : `?${parts.join('&')}`
}

/** Address of a draft site's sheet. */
export const draftHref = (target: DraftLinkTarget): string => base(target) + query({ pumper: target.pumperId, plan: target.planId })

/** Address of the back-up prime card of a pumper at a draft site. */
export const backUpCardHref = (target: DraftLinkTarget & { readonly season?: string }): string =>
  `${base(target)}/card${query({ pumper: target.pumperId, season: target.season })}`

/** Address of the prime drill with this pumper at this site. */
export const drillHref = ({ districtId, draftSiteId, pumperId }: DraftLinkTarget): string =>
  `/district/${encodeURIComponent(districtId)}/drill${query({ pumper: pumperId, site: draftSiteId })}`
