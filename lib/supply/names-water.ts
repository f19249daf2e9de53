import { findDraftSite, findSource, isCounted, type Bundle, type FillSite } from '../plan'

type Docs = Pick<Bundle, 'district' | 'plan'>

/** Whether a fill site says what is drawn on there: a draft site or a source that the district has. */
export const drawsOnNamed = (docs: Pick<Docs, 'district'>, { draftSiteId, sourceId }: Pick<FillSite, 'draftSiteId' | 'sourceId'>): boolean =>
  findDraftSite(docs, draftSiteId) !== undefined || findSource(docs, sourceId) !== undefined

/** Whether a hose lay can be all that a fill site has: no pumper and no measured rate is there. */
export const isOpenToLay = ({ pumperId, rate_gpm }: { readonly pumperId?: string | undefined; readonly rate_gpm?: number | undefined }): boolean =>
  pumperId === undefined && !((rate_gpm ?? 0) > 0)

/** Whether a fill site's water is named: what is drawn on there, or a lay of the plan that is its whole supply; whether that lay brings any is said of the lay. */
export const isWaterNamed = (docs: Docs, site: FillSite): boolean =>
  drawsOnNamed(docs, site) || (isOpenToLay(site) && (docs.plan.hoseLays ?? []).some((lay) => isCounted(lay) && lay.toId === site.id))
