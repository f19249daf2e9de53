import ts from 'typescript'
import { describe, expect, test } from 'vitest'
import { allKeys, findMessage, issueValue, sayIssue } from '@/app/_text'
import { issue } from '@/lib/issue'
import { readSources, visitAll } from './source-files'

const names = (id: string): string | undefined => ({ e1: 'Engine 1', p1: 'Mill pond' })[id]
const plain = (text: string | number): string => String(text).replaceAll('\u00a0', ' ')

describe('a value of an issue', () => {
  test('is shown by the unit its key ends in', () => {
    expect(plain(issueValue('lift_ft', 21.3, names, 'us'))).toBe('21.3 ft')
    expect(plain(issueValue('lift_ft', 21.3, names, 'metric'))).toBe('6.49 m')
    expect(plain(issueValue('spilledShare', 0.12, names, 'us'))).toBe('12%')
  })

  test('that is the id of an item is shown by its name', () => {
    expect(issueValue('pumper', 'e1', names, 'us')).toBe('Engine 1')
    expect(issueValue('reason', 'closed', names, 'us')).toBe('closed')
  })

  test('that is a count stays a number, for plurals', () => {
    expect(issueValue('tenderCount', 3, names, 'us')).toBe(3)
    expect(issueValue('ratio', 1.23456, names, 'us')).toBe('1.23')
  })
})

test('a road without a name is said to have none', () => {
  const one = issue('route-bridge-unknown', 'warn', [], { name: '', lat: 44, lon: -73 })
  expect(sayIssue(one, names, 'us')).toContain('on a road without a name')
})

test('a way that is blocked is told by what stands there', () => {
  const one = issue('route-blocked', 'block', [], { reason: 'weight', name: 'Mill Road', limit_lb: 30_000, vehicle_lb: 42_000, obstacleCount: 1 })
  const sentence = plain(sayIssue(one, names, 'us'))
  for (const part of ['Mill Road', '30,000 lb', '42,000 lb']) expect(sentence).toContain(part)
})

test('an issue without words is shown by its code, never hidden', () => {
  expect(sayIssue(issue('no-such-code', 'warn'), names, 'us')).toContain('no-such-code')
})

test('a quantity that a sentence names itself follows the units in use', () => {
  const one = issue('vacuum-over-20inHg', 'warn', ['e1'], { vacuum_inHg: 21.2 })
  expect(plain(sayIssue(one, names, 'us'))).toContain('20 inHg')
  expect(plain(sayIssue(one, names, 'metric'))).toContain('68 kPa')
})

test('no sentence of an issue holds a unit that would not follow the units in use', () => {
  const literal = allKeys().filter((key) => key.startsWith('issue.') && /[0-9] ?(ft|in|inHg|psi|gpm|gal|mi|mph|lb|°F)\b/.test(findMessage(key) ?? ''))
  expect(literal).toEqual([])
})

/** Codes written out anywhere: in calls of `issue`, and beside a severity. */
function codesInUse(): string[] {
  const codes = new Set<string>()
  for (const file of [...readSources('lib', ['.ts']), ...readSources('app', ['.ts', '.tsx'])]) {
    visitAll(file.tree, (node) => {
      if (ts.isObjectLiteralExpression(node)) {
        const texts = new Map(node.properties.flatMap((property) => (
          ts.isPropertyAssignment(property) && ts.isIdentifier(property.name) && ts.isStringLiteral(property.initializer)
            ? [[property.name.text, property.initializer.text] as const]
            : [])))
        const code = texts.get('code')
        if (code !== undefined && texts.has('severity')) codes.add(code)
      }
      if (!ts.isCallExpression(node) || !ts.isIdentifier(node.expression) || node.expression.text !== 'issue') return
      const first = node.arguments[0]
      if (first) visitAll(first, (inner) => { if (ts.isStringLiteral(inner)) codes.add(inner.text) })
    })
  }
  return [...codes].sort()
}

test('every issue that is raised has words', () => {
  expect(codesInUse().filter((code) => findMessage(`issue.${code}`) === undefined)).toEqual([])
})
