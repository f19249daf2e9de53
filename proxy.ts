import { NextResponse, type NextRequest } from 'next/server'
import { SEAT_COOKIE } from '@/app/_server/devices/grants'
import { pageAccess } from '@/app/_server/devices/page-access'
import { findViewer, isSeatPath } from '@/app/_server/devices/viewer'
import { getDatabase } from '@/app/_server/open-database'
import { refusal } from '@/app/_server/refusal'
import { isKnownHost } from '@/app/_server/request-guard'
import { commonHeaders, pagePolicy, tileOrigins } from '@/app/_server/security-headers'

/**
 * Every page and file passes here; the API has its own door, app/_server/door.ts. A device on the network that has not
 * joined gets the page to join at and nothing else; one that has, the pages of what it was granted; one at a seat, that.
 */
export async function proxy(request: NextRequest): Promise<Response> {
  if (!isKnownHost(request.headers)) {
    const refused = refusal('wrong-host', { host: request.headers.get('host') ?? '' })
    return new Response(refused.sentence, { status: refused.status, headers: commonHeaders })
  }
  const { pathname } = request.nextUrl
  const access = pageAccess(await findViewer(request.headers, getDatabase, pathname), pathname)
  if (access !== 'open') {
    const isPage = request.headers.get('accept')?.includes('text/html') ?? false
    const headers = { ...commonHeaders, 'Cache-Control': 'no-store' }
    // Whole, for the framework takes no other; the network is served over https alone, under the name that was asked for.
    const begin = request.cookies.has(SEAT_COOKIE) && !isSeatPath(pathname) ? '/seat' : '/join'
    if (access === 'join' && isPage) return NextResponse.redirect(`https://${request.headers.get('host')}${begin}`, { status: 307, headers })
    const refused = refusal(access === 'join' ? 'join-first' : 'beyond-grant')
    return new Response(refused.sentence, { status: refused.status, headers: { ...headers, 'Content-Type': 'text/plain; charset=utf-8' } })
  }
  const nonce = crypto.randomUUID().replaceAll('-', '')
  const policy = pagePolicy(nonce, tileOrigins(), process.env.NODE_ENV === 'development')
  const headers = new Headers(request.headers)
  headers.set('x-nonce', nonce)
  headers.set('content-security-policy', policy)
  const response = NextResponse.next({ request: { headers } })
  response.headers.set('Content-Security-Policy', policy)
  for (const [name, value] of Object.entries(commonHeaders)) response.headers.set(name, value)
  return response
}

export const config = { matcher: ['/((?!api/).*)'] }
