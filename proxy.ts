import { NextResponse, type NextRequest } from 'next/server'
import { refusal } from '@/app/_server/refusal'
import { isKnownHost } from '@/app/_server/request-guard'
import { commonHeaders, pagePolicy, tileOrigins } from '@/app/_server/security-headers'

/** Every page and file passes here; the API has its own door, app/_server/door.ts. */
export function proxy(request: NextRequest): Response {
  if (!isKnownHost(request.headers)) {
    const refused = refusal('wrong-host', { host: request.headers.get('host') ?? '' })
    return new Response(refused.sentence, { status: refused.status, headers: commonHeaders })
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
