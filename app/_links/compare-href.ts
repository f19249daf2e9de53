/** Plans that stand side by side at most. */
export const MOST_PLANS = 4

/** Address of plans side by side. */
export function compareHref(districtId: string, planIds: readonly string[]): string {
  const base = `/district/${encodeURIComponent(districtId)}/compare`
  return planIds.length === 0 ? base : `${base}?plans=${planIds.map(encodeURIComponent).join(',')}`
}

/** The plans an address names, each once, four at most. */
export function planIdsFrom(text: string | undefined): string[] {
  return [...new Set((text ?? '').split(',').map((id) => id.trim()).filter((id) => id !== ''))].slice(0, MOST_PLANS)
}
