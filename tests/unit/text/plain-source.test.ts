import { describe, expect, it } from 'vitest'
import '../../fixtures/every-word'
import { allKeys, findMessage, plainSource } from '@/app/_text'
import { defaults } from '@/lib/supply'

describe('a source as an officer reads it', () => {
  it('says in plain words that a figure was not checked, and that it is quoted', () => {
    expect(plainSource('pump rating conditions, NFPA 1901 (from memory)')).toBe('pump rating conditions, NFPA 1901 (common figure, not checked against a published table)')
    expect(plainSource('ANSI/HI 9.8 as quoted in an engineering note (seen second hand); 2 ft: NRCS and handbook')).toBe('ANSI/HI 9.8 as quoted in an engineering note (as quoted by others); 2 ft: NRCS and handbook')
  })

  it('needs no word where the source was read', () => {
    expect(plainSource('NRCS design sheet NE-ENG-76, 2004 (seen)')).toBe('NRCS design sheet NE-ENG-76, 2004')
    expect(plainSource('common practice, no source')).toBe('common practice, no published source')
    expect(plainSource('tape, own measurement')).toBe('tape, own measurement')
  })

  it('leaves no mark of ours in any default nor in any message', () => {
    for (const { source } of Object.values(defaults)) expect(plainSource(source)).not.toMatch(/from memory|second hand|\(seen/)
    expect(allKeys().filter((key) => /from memory|second.?hand/i.test(findMessage(key) ?? ''))).toEqual([])
  })
})
