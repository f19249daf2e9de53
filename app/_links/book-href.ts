import { screenHref } from './screens'

/** Address of a district's book; with a plan or a draft site only its sheets are chosen. */
export function bookHref(districtId: string, only: { readonly planId?: string; readonly draftSiteId?: string } = {}): string {
  const base = screenHref('book', districtId)
  if (only.planId !== undefined) return `${base}?plan=${encodeURIComponent(only.planId)}`
  return only.draftSiteId === undefined ? base : `${base}?draft=${encodeURIComponent(only.draftSiteId)}`
}
