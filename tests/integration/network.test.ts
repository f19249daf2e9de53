import { X509Certificate } from 'node:crypto'
import { mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs'
import { createServer, request as plainRequest, type IncomingHttpHeaders } from 'node:http'
import { request as secureRequest } from 'node:https'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { connect, createServer as createTlsServer } from 'node:tls'
import type { AddressInfo } from 'node:net'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { certificateBytes, ensureAuthority, ensureServerCertificate, fingerprintOf, mayVouchFor, type Pair } from '@/scripts/house/network/certificates.mjs'
import { makeNetwork, type Network } from '@/scripts/house/network/network.mjs'
import { forwardedAddress, WAY_HEADER } from '@/scripts/house/network/ways.mjs'

const DAY_ms = 24 * 60 * 60 * 1000
const NAMES = ['station.test', 'laptop', 'laptop.local']

let folder: string
beforeEach(() => { folder = mkdtempSync(path.join(tmpdir(), 'millrace-authority-')) })
afterEach(() => rmSync(folder, { recursive: true, force: true }))

/** Whether a TLS client that trusts only this authority takes what a server shows: OpenSSL, as built into Node, is the judge. */
async function isTrusted(authority: Pair, server: Pair, name: string): Promise<true | string> {
  const listener = createTlsServer({ key: server.key, cert: server.certificate + authority.certificate }, (socket) => socket.end())
  await new Promise<void>((resolve) => listener.listen(0, '127.0.0.1', resolve))
  const { port } = listener.address() as AddressInfo
  try {
    return await new Promise((resolve) => {
      const socket = connect({ host: '127.0.0.1', port, ca: authority.certificate, servername: /^[\d.:]+$/.test(name) ? '' : name, ...(/^[\d.]+$/.test(name) && { checkServerIdentity: () => undefined }) }, () => {
        resolve(socket.authorized || String(socket.authorizationError))
        socket.destroy()
      })
      socket.on('error', (error) => resolve(`${(error as NodeJS.ErrnoException).code ?? ''} ${error.message}`))
    })
  } finally {
    listener.close()
  }
}

describe('the authority', () => {
  test('is made once, is private to this user, and says what it is', async () => {
    const authority = await ensureAuthority(folder, NAMES)
    expect(await ensureAuthority(folder, ['other.test'])).toEqual(authority)
    for (const name of readdirSync(folder)) expect(statSync(path.join(folder, name)).mode & 0o777, name).toBe(0o600)
    const certificate = new X509Certificate(authority.certificate)
    expect(certificate.ca).toBe(true)
    expect(certificate.verify(certificate.publicKey)).toBe(true)
    expect(fingerprintOf(authority)).toBe(certificate.fingerprint256)
    expect(new X509Certificate(certificateBytes(authority)).fingerprint256).toBe(certificate.fingerprint256)
  })

  test('is believed for the station’s names and private addresses, and for no other place', async () => {
    const authority = await ensureAuthority(folder, NAMES)
    const made = (hosts: string[]) => ensureServerCertificate(folder, authority, hosts)
    const server = await made(['station.test', '192.168.1.20', '10.1.2.3', 'fd00::1'])
    expect(await isTrusted(authority, server, 'station.test')).toBe(true)
    expect(await isTrusted(authority, server, 'laptop')).toMatch(/^ERR_TLS_CERT_ALTNAME_INVALID/)
    // Even were its key stolen: certificates for another site or a public address (RFC 5737) are not taken.
    expect(await isTrusted(authority, await made(['bank.example']), 'bank.example')).toMatch(/permitted subtree violation/)
    expect(await isTrusted(authority, await made(['192.0.2.7']), '192.0.2.7')).toMatch(/permitted subtree violation/)
    expect(['station.test', 'laptop.local', '192.168.1.20', '172.31.0.1', 'fd00::1', 'fe80::1'].every((host) => mayVouchFor(authority, host))).toBe(true)
    expect(['bank.example', 'test', 'xstation.test', '192.0.2.7', '172.32.0.1', '2001:db8::1'].some((host) => mayVouchFor(authority, host))).toBe(false)
  })

  test('of another station is not believed', async () => {
    const authority = await ensureAuthority(folder, NAMES)
    const other = await ensureAuthority(path.join(folder, 'other'), NAMES)
    const server = await ensureServerCertificate(path.join(folder, 'other'), other, ['station.test'])
    expect(await isTrusted(authority, { ...server, certificate: server.certificate }, 'station.test')).not.toBe(true)
  })
})

describe('the server’s certificate', () => {
  const now = new Date('2026-03-01T12:00:00Z')

  // CA/Browser Forum baseline requirements 6.3.2 (from memory): at most 398 days; several systems refuse more.
  test('lasts at most 397 days, and is kept while it is good', async () => {
    const authority = await ensureAuthority(folder, NAMES, now)
    const server = await ensureServerCertificate(folder, authority, ['station.test', '192.168.1.20', 'fd00::1'], now)
    const { validFrom, validTo } = new X509Certificate(server.certificate)
    expect((Date.parse(validTo) - Date.parse(validFrom)) / DAY_ms).toBeLessThanOrEqual(397)
    expect(await ensureServerCertificate(folder, authority, ['192.168.1.20', 'station.test', 'fd00:0:0::1'], new Date(now.getTime() + 300 * DAY_ms))).toEqual(server)
  })

  test('is made anew when an address changes, and in its last month', async () => {
    const authority = await ensureAuthority(folder, NAMES, now)
    const first = await ensureServerCertificate(folder, authority, ['station.test', '192.168.1.20'], now)
    const moved = await ensureServerCertificate(folder, authority, ['station.test', '192.168.1.21'], now)
    expect(new X509Certificate(moved.certificate).subjectAltName).toBe('DNS:station.test, IP Address:192.168.1.21')
    expect(moved.certificate).not.toBe(first.certificate)
    const later = await ensureServerCertificate(folder, authority, ['station.test', '192.168.1.21'], new Date(now.getTime() + 370 * DAY_ms))
    expect(later.certificate).not.toBe(moved.certificate)
    expect(await ensureServerCertificate(folder, authority, ['station.test', '192.168.1.21'], new Date(now.getTime() + 371 * DAY_ms))).toEqual(later)
  })
})

type Answer = { status: number; headers: IncomingHttpHeaders; body: string }

function get(secure: boolean, port: number, { host = 'station.test', path: at = '/', headers = {}, ca }: { host?: string; path?: string; headers?: Record<string, string>; ca?: string }): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const take = (response: import('node:http').IncomingMessage) => {
      let body = ''
      response.setEncoding('utf8').on('data', (part: string) => (body += part)).on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body }))
    }
    const common = { host: '127.0.0.1', port, path: at, headers: { host, ...headers }, agent: false }
    const sent = secure ? secureRequest({ ...common, ca, servername: host }, take) : plainRequest(common, take)
    sent.on('error', reject).end()
  })
}

describe('serving other devices', () => {
  let network: Network
  let seen: IncomingHttpHeaders[]
  let addresses: string[]
  const make = (port = 0) => makeNetwork({
    folder, port, guidePort: 0, names: () => ['station.test'], addresses: () => addresses,
    handle: (request, response) => { seen.push(request.headers); response.end('the app') },
  })
  beforeEach(() => {
    seen = []
    addresses = ['192.168.1.20', '192.0.2.7']
    network = make()
  })
  afterEach(() => network.stop())

  test('begins when it is turned on and ends when it is turned off', async () => {
    expect(network.state()).toMatchObject({ isOn: false, port: undefined })
    await network.setOn(true)
    const { port, guidePort, names, addresses: own, notCovered, fingerprint } = network.state()
    expect({ names, own, notCovered }).toEqual({ names: ['station.test'], own: ['192.168.1.20'], notCovered: ['192.0.2.7'] })
    const { certificate } = await ensureAuthority(folder, [])
    expect(fingerprint).toBe(new X509Certificate(certificate).fingerprint256)
    expect(await get(true, port!, { ca: certificate })).toMatchObject({ status: 200, body: 'the app' })
    await network.setOn(false)
    await expect(get(true, port!, { ca: certificate })).rejects.toThrow()
    await expect(get(false, guidePort!, {})).rejects.toThrow()
    expect(network.isKnown('station.test')).toBe(false)
  })

  test('says of each request that it came over the network, whatever the client claims', async () => {
    await network.setOn(true)
    const { certificate } = await ensureAuthority(folder, [])
    await get(true, network.state().port!, { ca: certificate, headers: { [WAY_HEADER]: 'x station', 'X-Millrace-Way': 'y station' } })
    expect(seen[0]?.[WAY_HEADER]).toMatch(/^[0-9a-f]{64} network 127\.0\.0\.1$/)
  })

  test('gives, without encryption, the guide and the certificate and nothing else', async () => {
    await network.setOn(true)
    const { guidePort, port } = network.state()
    const page = await get(false, guidePort!, {})
    expect(page.status).toBe(200)
    expect(page.body).toContain(network.state().fingerprint)
    expect(page.body).toContain(`https://station.test:${port}/join`)
    expect(page.body).not.toContain('<script')
    const certificate = await get(false, guidePort!, { path: '/millrace-station.crt' })
    expect(certificate.headers['content-type']).toBe('application/x-x509-ca-cert')
    for (const at of ['/api/documents', '/join', '/authority-key.pem', '/../authority-key.pem', '/millrace-station.crt/x']) expect((await get(false, guidePort!, { path: at })).status, at).toBe(404)
    expect((await get(false, guidePort!, { host: 'rebound.example' })).status).toBe(421)
    expect(seen).toEqual([])
  })

  test('shows a certificate for the new address within a look when the address changes', async () => {
    await network.setOn(true)
    addresses = ['192.168.7.7']
    await network.look()
    expect(network.state().addresses).toEqual(['192.168.7.7'])
    expect([network.isKnown('192.168.7.7'), network.isKnown('192.168.1.20')]).toEqual([true, false])
    const shown = await new Promise<string>((resolve, reject) => {
      const socket = connect({ host: '127.0.0.1', port: network.state().port!, rejectUnauthorized: false }, () => {
        resolve(socket.getPeerCertificate().subjectaltname ?? '')
        socket.destroy()
      }).on('error', reject)
    })
    expect(shown).toContain('192.168.7.7')
  })

  test('tells when its port is taken, and leaves nothing half open', async () => {
    const taken = createServer()
    await new Promise<void>((resolve) => taken.listen(0, '::', resolve))
    const { port } = taken.address() as AddressInfo
    const other = make(port)
    await other.setOn(true)
    expect(other.state()).toMatchObject({ isOn: true, port: undefined, trouble: { code: 'port-taken', port } })
    await new Promise((resolve) => taken.close(resolve))
    await other.setOn(false)
    await other.setOn(true)
    expect(other.state()).toMatchObject({ port, trouble: undefined })
    await other.stop()
  })
})

test('behind a proxy the address is the one that the proxy saw, not what the client wrote before it', () => {
  const from = (header: string | undefined) => forwardedAddress({ headers: { 'x-forwarded-for': header }, socket: { remoteAddress: '::ffff:127.0.0.1' } } as never)
  expect(from('6.6.6.6, 203.0.113.9')).toBe('203.0.113.9')
  expect(from('x y')).toBe('127.0.0.1')
  expect(from(undefined)).toBe('127.0.0.1')
})
