/**
 * The station's own certificate authority, and the certificate its network server shows.
 *
 * The authority may vouch only for the station's own names and for addresses inside private networks (name constraints,
 * RFC 5280, section 4.2.1.10), so a phone that trusts it trusts it for nothing else. Keys stay in the data folder,
 * readable by this user alone.
 */
import { createHash, randomBytes, webcrypto, X509Certificate } from 'node:crypto'
import { chmod, mkdir, readFile, rename, writeFile } from 'node:fs/promises'
import { isIPv4, isIPv6 } from 'node:net'
import path from 'node:path'
// The certificate library asks for this before itself.
import 'reflect-metadata'
import * as x509 from '@peculiar/x509'

const DAY_ms = 24 * 60 * 60 * 1000
const AUTHORITY_days = 3650
/** Longer ones are refused by several systems. */
const SERVER_days = 397
const RENEW_BEFORE_days = 30
const KEY = { name: 'ECDSA', namedCurve: 'P-256' }
const SIGNATURE = { name: 'ECDSA', hash: 'SHA-256' }

/** Private and link-local ranges: RFC 1918, RFC 3927, RFC 4193, RFC 4291; and this machine itself. */
const PRIVATE_v4 = [['10.0.0.0', 8], ['172.16.0.0', 12], ['192.168.0.0', 16], ['169.254.0.0', 16], ['127.0.0.0', 8]]
const PRIVATE_v6 = [[0xfc, 7], [0xfe80, 10]]

x509.cryptoProvider.set(webcrypto)

const der = (tag, ...parts) => {
  const body = Buffer.concat(parts)
  const size = body.length < 128 ? [body.length] : body.length < 256 ? [0x81, body.length] : [0x82, body.length >> 8, body.length & 255]
  return Buffer.concat([Buffer.from([tag, ...size]), body])
}

function rangesAsBytes() {
  const v4 = PRIVATE_v4.map(([address, bits]) => [Buffer.from(address.split('.').map(Number)), bits])
  const v6 = PRIVATE_v6.map(([prefix, bits]) => [Buffer.concat([Buffer.from(prefix > 255 ? [prefix >> 8, prefix & 255] : [prefix]), Buffer.alloc(16)]).subarray(0, 16), bits])
  return [...v4, ...v6].map(([address, bits]) => {
    const mask = Buffer.alloc(address.length)
    for (let bit = 0; bit < bits; bit += 1) mask[bit >> 3] |= 0x80 >> (bit & 7)
    return Buffer.concat([address, mask])
  })
}

/** NameConstraints with permitted subtrees only: DNS names are [2], address ranges [7]. */
const nameConstraints = (names) =>
  new x509.Extension('2.5.29.30', true, der(0x30, der(0xa0,
    ...names.map((name) => der(0x30, der(0x82, Buffer.from(name, 'ascii')))),
    ...rangesAsBytes().map((range) => der(0x30, der(0x87, range))))))

const toPem = (label, bytes) => `-----BEGIN ${label}-----\n${Buffer.from(bytes).toString('base64').replace(/.{1,64}/g, '$&\n')}-----END ${label}-----\n`

const fromPem = (text) => Buffer.from(text.replace(/-----[^-]+-----|\s/g, ''), 'base64')

const exportKey = async (key) => toPem('PRIVATE KEY', await webcrypto.subtle.exportKey('pkcs8', key))

const importKey = (pem) => webcrypto.subtle.importKey('pkcs8', fromPem(pem), KEY, false, ['sign'])

const newKeys = () => webcrypto.subtle.generateKey(KEY, true, ['sign', 'verify'])

const newSerial = () => `01${randomBytes(15).toString('hex')}`

/** Whole or not at all, and never readable by another user. */
async function writePrivately(file, text) {
  const draft = `${file}.part`
  await writeFile(draft, text, { mode: 0o600, flush: true })
  await chmod(draft, 0o600)
  await rename(draft, file)
}

async function readPair(folder, name) {
  try {
    const [key, certificate] = await Promise.all([readFile(path.join(folder, `${name}-key.pem`), 'utf8'), readFile(path.join(folder, `${name}.pem`), 'utf8')])
    return { key, certificate }
  } catch (error) {
    if (error.code === 'ENOENT') return undefined
    throw error
  }
}

async function writePair(folder, name, { key, certificate }) {
  await mkdir(folder, { recursive: true, mode: 0o700 })
  await writePrivately(path.join(folder, `${name}-key.pem`), key)
  await writePrivately(path.join(folder, `${name}.pem`), certificate)
}

async function makeAuthority(names, now) {
  const keys = await newKeys()
  const made = await x509.X509CertificateGenerator.createSelfSigned({
    serialNumber: newSerial(),
    name: `CN=Millrace station ${randomBytes(3).toString('hex')}`,
    notBefore: new Date(now.getTime() - DAY_ms),
    notAfter: new Date(now.getTime() + AUTHORITY_days * DAY_ms),
    signingAlgorithm: SIGNATURE,
    keys,
    extensions: [
      new x509.BasicConstraintsExtension(true, 0, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.keyCertSign | x509.KeyUsageFlags.cRLSign, true),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
      nameConstraints(names),
    ],
  })
  return { key: await exportKey(keys.privateKey), certificate: toPem('CERTIFICATE', made.rawData) }
}

/**
 * The authority kept in the folder, made at the first call.
 *
 * @param names DNS names that a new one may vouch for
 */
export async function ensureAuthority(folder, names, now = new Date()) {
  const kept = await readPair(folder, 'authority')
  if (kept) return kept
  const made = await makeAuthority(names, now)
  await writePair(folder, 'authority', made)
  return made
}

/** True if the authority may vouch for a name or address: judged by what its own certificate says. */
export function mayVouchFor(authority, name) {
  const text = new x509.X509Certificate(authority.certificate).extensions.find(({ type }) => type === '2.5.29.30')
  const bytes = Buffer.from(text?.value ?? [])
  if (isIPv4(name)) {
    const parts = name.split('.').map(Number)
    return PRIVATE_v4.some(([range, bits]) => sharesPrefix(parts, range.split('.').map(Number), bits))
  }
  if (isIPv6(name)) return /^(f[cd]|fe[89ab])/i.test(name)
  return bytes.includes(der(0x82, Buffer.from(name, 'ascii')))
}

const sharesPrefix = (a, b, bits) => {
  const number = (parts) => parts.reduce((sum, part) => sum * 256 + part, 0)
  const size = 2 ** (32 - bits)
  return Math.floor(number(a) / size) === Math.floor(number(b) / size)
}

async function makeServer(authority, hosts, now) {
  const issuer = new x509.X509Certificate(authority.certificate)
  const keys = await newKeys()
  const notBefore = new Date(now.getTime() - 60 * 60 * 1000)
  const made = await x509.X509CertificateGenerator.create({
    serialNumber: newSerial(),
    subject: 'CN=Millrace',
    issuer: issuer.subject,
    notBefore,
    notAfter: new Date(notBefore.getTime() + SERVER_days * DAY_ms - 1000),
    signingAlgorithm: SIGNATURE,
    publicKey: keys.publicKey,
    signingKey: await importKey(authority.key),
    extensions: [
      new x509.BasicConstraintsExtension(false, undefined, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.digitalSignature, true),
      new x509.ExtendedKeyUsageExtension([x509.ExtendedKeyUsage.serverAuth]),
      new x509.SubjectAlternativeNameExtension(hosts.map((value) => ({ type: isIPv4(value) || isIPv6(value) ? 'ip' : 'dns', value }))),
      await x509.AuthorityKeyIdentifierExtension.create(issuer),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
    ],
  })
  return { key: await exportKey(keys.privateKey), certificate: toPem('CERTIFICATE', made.rawData) }
}

/** Names and addresses that a certificate is for, as Node words them, in one order. */
const hostsOf = (certificate) => (new X509Certificate(certificate).subjectAltName ?? '').split(', ').map((one) => one.replace(/^(DNS|IP Address):/, '').toLowerCase())

/** IPv6 addresses are written in more than one way; compared by what they mean. */
const canonical = (host) => (isIPv6(host) ? new URL(`http://[${host}]`).hostname : host.toLowerCase())

function isGood(kept, authority, hosts, now) {
  const certificate = new X509Certificate(kept.certificate)
  const left = Date.parse(certificate.validTo) - now.getTime()
  const same = JSON.stringify(hostsOf(kept.certificate).map(canonical).sort()) === JSON.stringify(hosts.map(canonical).sort())
  return same && left > RENEW_BEFORE_days * DAY_ms && left <= SERVER_days * DAY_ms && certificate.verify(new X509Certificate(authority.certificate).publicKey)
}

/**
 * The certificate for these names and addresses, made anew when they changed, or it ends within a month.
 *
 * @param hosts those the authority may vouch for, one or more
 */
export async function ensureServerCertificate(folder, authority, hosts, now = new Date()) {
  const kept = await readPair(folder, 'server')
  if (kept && isGood(kept, authority, hosts, now)) return kept
  const made = await makeServer(authority, hosts, now)
  await writePair(folder, 'server', made)
  return made
}

/** The authority's certificate as phones install it. */
export const certificateBytes = ({ certificate }) => fromPem(certificate)

/** SHA-256 of the certificate, in pairs, as phones and computers show it. */
export const fingerprintOf = (authority) => createHash('sha256').update(certificateBytes(authority)).digest('hex').toUpperCase().replace(/..(?=.)/g, '$&:')
