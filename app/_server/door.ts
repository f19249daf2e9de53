import { z } from 'zod'
import { issuesFromZod } from '@/lib/plan'
import { requireAccess } from './devices/access'
import { findViewer, type Viewer } from './devices/viewer'
import { getDatabase } from './open-database'
import { Refusal, refusal, refusalOfIssue } from './refusal'
import { isKnownHost, isOwnOrigin } from './request-guard'
import { commonHeaders, dataPolicy } from './security-headers'

type Context<P> = { params: Promise<P> }
type Work<P> = (request: Request, params: P, viewer: Viewer) => Promise<Response>

const SAFE = ['GET', 'HEAD']

/**
 * Every part of the API stands behind this: it turns away requests from other sites, lets a device on
 * the network only to what it was granted (`devices/access.ts`), answers refusals as `{ error: { code, path, sentence } }`, and puts the headers on.
 */
export function door<P = Record<string, never>>(work: Work<P>) {
  return async (request: Request, context: Context<P>): Promise<Response> => {
    const response = await answer(request, context, work)
    response.headers.set('Content-Security-Policy', dataPolicy)
    for (const [name, value] of Object.entries(commonHeaders)) response.headers.set(name, value)
    if (!response.headers.has('Cache-Control')) response.headers.set('Cache-Control', 'no-store')
    return response
  }
}

async function answer<P>(request: Request, context: Context<P>, work: Work<P>): Promise<Response> {
  try {
    if (!isKnownHost(request.headers)) throw refusal('wrong-host', { host: request.headers.get('host') ?? '' })
    if (!SAFE.includes(request.method) && !isOwnOrigin(request.headers)) throw refusal('other-origin')
    const { pathname } = new URL(request.url)
    const viewer = await findViewer(request.headers, getDatabase, pathname)
    await requireAccess(viewer, request.method, pathname, getDatabase)
    return await work(request, await context.params, viewer)
  } catch (error) {
    const { status, code, path, sentence, extra } = refusalFrom(error)
    return Response.json({ ...extra, error: { code, path, sentence, ...(extra.issue ? { issue: extra.issue } : {}) } }, { status })
  }
}

function refusalFrom(error: unknown): Refusal {
  if (error instanceof Refusal) return error
  if (error instanceof z.ZodError) {
    const [first] = issuesFromZod(error)
    if (first) return refusalOfIssue(first)
  }
  if (isBusy(error)) return refusal('busy')
  console.error(error)
  return refusal('unexpected')
}

/** The database did not get its turn within the time it waits. */
const isBusy = (error: unknown): boolean =>
  error instanceof Error && (('code' in error && (error.code === 'P1008' || error.code === 'P2028')) || /database is locked|SQLITE_BUSY/.test(error.message))
