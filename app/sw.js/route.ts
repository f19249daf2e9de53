import { readFile } from 'node:fs/promises'
import path from 'node:path'
import { isKnownHost } from '@/app/_server/request-guard'
import { commonHeaders } from '@/app/_server/security-headers'

/** The service worker as it was bundled with this build; there is none while the app is being developed. */
export async function GET(request: Request): Promise<Response> {
  if (!isKnownHost(request.headers)) return new Response(null, { status: 421, headers: commonHeaders })
  const file = path.resolve(process.env.MILLRACE_BUILD || '.next', 'service-worker.js')
  const text = await readFile(/* turbopackIgnore: true */ file, 'utf8').catch(() => undefined)
  if (text === undefined) return new Response(null, { status: 404, headers: commonHeaders })
  return new Response(text, { headers: { ...commonHeaders, 'Content-Type': 'text/javascript; charset=utf-8', 'Cache-Control': 'no-cache', 'Content-Security-Policy': "default-src 'self'" } })
}
