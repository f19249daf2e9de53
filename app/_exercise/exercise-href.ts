import { screenHref } from '../_ui/screens'

/** Address of the exercises of a district, of one of them, or of going through it. */
export function exerciseHref(districtId: string, exerciseId?: string, page?: 'debrief'): string {
  const base = screenHref('exercise', districtId, exerciseId)
  return page ? `${base}/${page}` : base
}
