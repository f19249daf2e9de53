/** Where the service worker keeps roads, maps and elevation, each under its hash. */
export const DATA_CACHE = 'millrace-data'

/** Where it keeps the app's own icons and its description. */
export const ICON_CACHE = 'millrace-icons'

/** Where it keeps the pages of a build. */
export const pageCacheOf = (build: string): string => `millrace-pages-${build}`

/** Address of data that is kept under its hash. */
export const dataAddress = (hash: string): string => `/api/blobs/${hash}`
