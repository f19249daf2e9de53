import { afterEach, describe, expect, test, vi } from 'vitest'
import { isKnownHost, isOwnOrigin } from '@/app/_server/request-guard'
import { pagePolicy, tileOrigins } from '@/app/_server/security-headers'

afterEach(() => vi.unstubAllEnvs())

const headers = (entries: Record<string, string>) => new Headers(entries)

describe('host names', () => {
  test.each(['localhost:3000', '127.0.0.1:3000', '[::1]:3000', 'LOCALHOST', 'localhost'])('%s is answered', (host) => {
    expect(isKnownHost(headers({ host }))).toBe(true)
  })

  test.each(['rebound.example', 'localhost.rebound.example', '127.0.0.1.rebound.example:3000', '192.0.2.7', '', '0.0.0.0'])('"%s" is not', (host) => {
    expect(isKnownHost(headers({ host }))).toBe(false)
  })

  test('a request without a host is not answered', () => {
    expect(isKnownHost(headers({}))).toBe(false)
  })

  test('names can be added, and an address to listen on counts unless it is all of them', () => {
    vi.stubEnv('MILLRACE_NAMES', 'station.example, Laptop.local')
    vi.stubEnv('MILLRACE_HOST', '192.0.2.7')
    for (const host of ['station.example', 'laptop.local:3000', '192.0.2.7:3000']) expect(isKnownHost(headers({ host }))).toBe(true)
    vi.stubEnv('MILLRACE_HOST', '0.0.0.0')
    expect(isKnownHost(headers({ host: '0.0.0.0:3000' }))).toBe(false)
  })
})

describe('where a change comes from', () => {
  const host = 'localhost:3000'

  test.each([
    {}, { origin: 'http://localhost:3000' }, { 'origin': 'http://localhost:3000', 'sec-fetch-site': 'same-origin' }, { 'sec-fetch-site': 'none' },
  ])('%o is ours', (given) => {
    expect(isOwnOrigin(headers({ host, ...given } as Record<string, string>))).toBe(true)
  })

  test.each([
    { origin: 'https://elsewhere.example' }, { origin: 'http://localhost:3001' }, { origin: 'null' }, { origin: '' },
    { 'sec-fetch-site': 'cross-site' }, { 'sec-fetch-site': 'same-site' }, { 'origin': 'http://localhost:3000', 'sec-fetch-site': 'cross-site' },
  ])('%o is not', (given) => {
    expect(isOwnOrigin(headers({ host, ...given } as Record<string, string>))).toBe(false)
  })
})

describe('policy of the pages', () => {
  test('scripts come from this server or carry the nonce, and are never evaluated from text', () => {
    const rules = pagePolicy('abc').split('; ')
    expect(rules).toContain("script-src 'self' 'nonce-abc'")
    expect(rules).toContain("default-src 'self'")
    expect(rules).toContain("object-src 'none'")
    expect(rules).toContain("frame-ancestors 'none'")
  })

  test('map pictures from elsewhere are let in only where configured', () => {
    expect(tileOrigins('https://tiles.example/{z}/{x}/{y}.png, javascript:alert(1), nonsense')).toEqual(['https://tiles.example'])
    expect(tileOrigins('')).toEqual([])
    expect(pagePolicy('abc', ['https://tiles.example'])).toContain("img-src 'self' data: blob: https://tiles.example")
  })
})
