import { isSeatPath, type Viewer } from './viewer'

/** Files that hold nothing of any district: every device may have them, as the page to join needs them. */
const OPEN_FILES = /^\/(?:_next\/static\/.+|icons\/[\w.-]+|icon\.svg|apple-icon\.png|favicon\.ico|sw\.js|manifest\.webmanifest|join)$/
/** Pages for whoever has joined; none of them holds data. */
const OWN_PAGES = ['/', '/device', '/drill', '/help']
/** An id that stands for any, in the copy of a page that a device keeps for the time without network. */
const STAND_IN = /^any-\w+-any$/

/** What a viewer gets for a path: the page, the page to join at, or nothing. */
export function pageAccess(viewer: Viewer, path: string): 'open' | 'join' | 'closed' {
  if (viewer.kind === 'station' || OPEN_FILES.test(path)) return 'open'
  if (isSeatPath(path)) return viewer.kind === 'seat' ? 'open' : 'join'
  if (viewer.kind === 'nobody' || viewer.kind === 'seat') return 'join'
  if (OWN_PAGES.includes(path)) return 'open'
  const id = /^\/district\/([^/]+)(?:\/|$)/.exec(path)?.[1]
  const isOwn = id !== undefined && (id === encodeURIComponent(viewer.grant.scope.districtId) || id === viewer.grant.scope.districtId || STAND_IN.test(id))
  return isOwn ? 'open' : 'closed'
}
