/**
 * What the network may see without any secret: how to make a phone trust the station, and the certificate for it. Over
 * plain HTTP, because before that a phone can have nothing better; the fingerprint is compared by eye.
 */
import { readFileSync } from 'node:fs'
import IntlMessageFormat from 'intl-messageformat'
import { inRoot } from '../places.mjs'
import { certificateBytes, fingerprintOf } from './certificates.mjs'

export const CERTIFICATE_PATH = '/millrace-station.crt'
const SYSTEMS = ['apple', 'android', 'windows']
const STEPS = ['1', '2', '3', '4']

const HEADERS = {
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  'Referrer-Policy': 'no-referrer',
  'Cache-Control': 'no-store',
  'Content-Security-Policy': "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
}

const texts = () => JSON.parse(readFileSync(inRoot('app', '_text', 'en', 'devices.json'), 'utf8'))
const escaped = (text) => String(text).replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`)

const STYLE = `
:root { color-scheme: light dark; --ink: #1f1b16; --paper: #fcfaf5; --line: #8a8172; --act: #2b2721; --on-act: #fff }
@media (prefers-color-scheme: dark) { :root { --ink: #eadcc4; --paper: #1b1711; --line: #8a7a60; --act: #a58a5f; --on-act: #1b1711 } }
body { max-width: 38rem; margin: 0 auto; padding: 1.25rem; background: var(--paper); color: var(--ink); font: 1.0625rem/1.5 system-ui, sans-serif }
h1 { font-size: 1.5rem; line-height: 1.2 } h2 { font-size: 1.125rem; margin-top: 2rem } a { color: inherit }
.act { display: inline-block; padding: .75rem 1rem; border-radius: .375rem; background: var(--act); color: var(--on-act); font-weight: 700; text-decoration: none }
code { display: block; padding: .75rem; border: 1px solid var(--line); border-radius: .375rem; font-size: .9375rem; overflow-wrap: anywhere }
li { margin-block: .375rem }`

/** The page, for a phone that came under this name. */
export function guidePage(authority, joinAddress) {
  const words = texts()
  const say = (key, values = {}) => escaped(new IntlMessageFormat(words[key], 'en').format(values))
  const part = (system) => `<h2>${say(`guide.${system}`)}</h2><ol>${STEPS.filter((step) => words[`guide.${system}.${step}`]).map((step) => `<li>${say(`guide.${system}.${step}`)}</li>`).join('')}</ol>`
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>${say('guide.title')}</title><style>${STYLE}</style></head><body><main>
<h1>${say('guide.title')}</h1><p>${say('guide.about')}</p>
<p><a class="act" href="${CERTIFICATE_PATH}">${say('guide.get')}</a></p>
<p>${say('guide.compare')}</p><code>${escaped(fingerprintOf(authority))}</code>
${SYSTEMS.map(part).join('')}
<h2>${say('guide.then')}</h2><p>${say('guide.then.text')}</p><p><a class="act" href="${escaped(joinAddress)}">${say('guide.join')}</a></p><p>${say('guide.remove')}</p>
</main></body></html>`
}

/**
 * Answers a request on the guide's own port; there is nothing else there.
 *
 * @param joinAddressOf address of the page to join at, for the name a phone came under; undefined for a name not ours
 */
export function answerGuide(request, response, authority, joinAddressOf) {
  const { pathname } = new URL(request.url ?? '/', 'http://guide')
  const isRead = request.method === 'GET' || request.method === 'HEAD'
  const send = (status, type, body, more = {}) => {
    response.writeHead(status, { ...HEADERS, 'Content-Type': type, 'Content-Length': Buffer.byteLength(body), ...more })
    response.end(request.method === 'HEAD' ? undefined : body)
  }
  const joinAddress = joinAddressOf(String(request.headers.host ?? '').toLowerCase().replace(/:\d+$/, ''))
  if (!isRead || joinAddress === undefined) return send(isRead ? 421 : 405, 'text/plain; charset=utf-8', '')
  if (pathname === CERTIFICATE_PATH) return send(200, 'application/x-x509-ca-cert', certificateBytes(authority), { 'Content-Disposition': 'attachment; filename="millrace-station.crt"' })
  if (pathname === '/') return send(200, 'text/html; charset=utf-8', guidePage(authority, joinAddress))
  return send(404, 'text/plain; charset=utf-8', '')
}
