import ts from 'typescript'
import { describe, expect, test } from 'vitest'
import '../../fixtures/every-word'
import { allKeys, argumentsOf, findMessage, isTextKey, say } from '@/app/_text'
import { placeOf, readSources, visitAll } from './source-files'

const sources = readSources('app', ['.ts', '.tsx'])

/** Calls of `say` with a key written out, and the names of their values where these are written out too. */
function findCalls(): { place: string; key: string; names: string[] | undefined }[] {
  const calls: { place: string; key: string; names: string[] | undefined }[] = []
  for (const file of sources) {
    visitAll(file.tree, (node) => {
      if (!ts.isCallExpression(node) || !ts.isIdentifier(node.expression) || node.expression.text !== 'say') return
      const [first, second] = node.arguments
      const keys: string[] = []
      if (first) visitAll(first, (inner) => { if (ts.isStringLiteral(inner) && /^[a-z-]+\.[a-zA-Z0-9_.-]+$/.test(inner.text)) keys.push(inner.text) })
      const isPlain = first && ts.isStringLiteral(first)
      for (const key of keys) calls.push({ place: placeOf(file, node), key, names: isPlain ? namesOf(second) : undefined })
    })
  }
  return calls
}

function namesOf(values: ts.Expression | undefined): string[] | undefined {
  if (!values) return []
  if (!ts.isObjectLiteralExpression(values)) return undefined
  const names: string[] = []
  for (const property of values.properties) {
    if (ts.isSpreadAssignment(property) || !property.name || ts.isComputedPropertyName(property.name)) return undefined
    names.push(property.name.text)
  }
  return names
}

test('every message is well formed', () => {
  const keys = allKeys()
  expect(keys.length).toBeGreaterThan(50)
  const broken = keys.filter((key) => { try { argumentsOf(key); return false } catch { return true } })
  expect(broken).toEqual([])
})

test('no message is empty or begins or ends with a space', () => {
  expect(allKeys().filter((key) => { const text = findMessage(key) ?? ''; return text === '' || text !== text.trim() })).toEqual([])
})

test('every key that is said exists', () => {
  const calls = findCalls()
  expect(calls.length).toBeGreaterThan(0)
  expect(calls.filter(({ key }) => !isTextKey(key)).map(({ place, key }) => `${place} ${key}`)).toEqual([])
})

test('every message is given the values it takes', () => {
  const wrong = findCalls().filter(({ key, names }) => names && isTextKey(key) && argumentsOf(key).some((name) => !names.includes(name)))
  expect(wrong.map(({ place, key, names }) => `${place} ${key} takes ${argumentsOf(key).join(', ')}; is given ${names?.join(', ') ?? ''}`)).toEqual([])
})

describe('say', () => {
  test('puts values in, with plurals', () => {
    expect(say('shell.save.waiting', { count: 1 })).toBe('1 change kept here, to be sent')
    expect(say('shell.save.waiting', { count: 3 })).toBe('3 changes kept here, to be sent')
  })

  test('refuses a message without its values rather than showing a gap', () => {
    expect(() => say('shell.save.waiting')).toThrow()
  })

  test('names the values of a message, those inside plurals too', () => {
    expect(argumentsOf('shell.save.waiting')).toEqual(['count'])
    expect(argumentsOf('entry.out-of-range')).toEqual(['field', 'text', 'min', 'max'])
  })
})
