/** Address of the page where places of a district come in and go out. */
export const exchangeHref = (districtId: string): string => `/district/${encodeURIComponent(districtId)}/exchange`
