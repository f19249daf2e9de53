import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { contrastOf, luminanceOf } from '@/app/_look/contrast'
import { SHADE_STRENGTH } from '@/app/_map/paint/draw-ground'

const css = readFileSync(new URL('../../../app/_look/tokens.css', import.meta.url), 'utf8').replace(/\/\*[\s\S]*?\*\//g, '')

/** Colours of the first block whose selector ends so, after a mark in the file. */
function coloursOf(selector: string, after = ''): Record<string, string> {
  const from = css.indexOf(after)
  const at = css.indexOf(`${selector} {`, from)
  if (from < 0 || at < 0) throw new Error(`no block ${selector}`)
  const block = css.slice(at, css.indexOf('}', at))
  return Object.fromEntries([...block.matchAll(/--([a-z-]+): (#[0-9a-f]{6});/g)].map(([, name = '', hex = '']) => [name, hex]))
}

const lists = {
  day: coloursOf(':root'),
  'night by the device': coloursOf(':root:not([data-theme])', 'prefers-color-scheme: dark'),
  night: coloursOf(":root[data-theme='dark']"),
  sun: coloursOf(":root[data-theme='sun']"),
  print: coloursOf(':root[data-theme]', '@media print'),
}

/** Ground, and what is read on it. Text needs 4.5 to 1 (WCAG 2.2, 1.4.3, published). */
const textPairs: [ground: string, inks: string[]][] = [
  ['paper', ['ink', 'ink-quiet', 'water', 'amber', 'danger']],
  ['sheet', ['ink', 'ink-quiet', 'water', 'amber', 'danger']],
  ['sunk', ['ink', 'ink-quiet', 'water', 'amber', 'danger']],
  ['hover', ['ink', 'ink-quiet']],
  ['chosen', ['ink', 'ink-quiet']],
  ['act', ['on-act']],
  ['act-hover', ['on-act']],
  ['water', ['on-water']],
  ['water-soft', ['ink', 'ink-quiet', 'water']],
  ['amber-soft', ['ink', 'ink-quiet', 'amber']],
  ['amber-solid', ['on-amber']],
  ['danger-soft', ['ink', 'danger']],
  ['danger-solid', ['on-danger']],
]

/** Edges of controls, focus and symbols need 3 to 1 (WCAG 2.2, 1.4.11, published). */
const shapePairs: [ground: string, shapes: string[]][] = [
  ['paper', ['line-strong', 'focus', 'act', 'water']],
  ['sheet', ['line-strong', 'focus', 'act', 'water']],
  ['sunk', ['line-strong', 'focus', 'act', 'water']],
]

function colour(list: Record<string, string>, name: string): string {
  const hex = list[name]
  if (hex === undefined) throw new Error(`no colour ${name}`)
  return hex
}

test('contrast is 21 for black on white, 1 for a colour on itself, and 4.54 for #767676 on white', () => {
  expect(contrastOf('#000000', '#ffffff')).toBeCloseTo(21, 9)
  expect(contrastOf('#1b5a8f', '#1b5a8f')).toBe(1)
  // WCAG's well-known lightest grey that passes on white: 4.54, published with the technique G18 tools; from memory.
  expect(contrastOf('#767676', '#ffffff')).toBeCloseTo(4.54, 2)
})

describe.each(Object.entries(lists))('colours of %s', (name, list) => {
  test('has every colour of the day', () => {
    expect(Object.keys(list).sort()).toEqual(Object.keys(lists.day).sort())
  })

  test('lets every text be read, in bright sun from 7 to 1', () => {
    const least = name === 'sun' ? 7 : 4.5
    const failing = textPairs.flatMap(([ground, inks]) => inks.map((ink) => ({ pair: `${ink} on ${ground}`, ratio: contrastOf(colour(list, ink), colour(list, ground)) })))
      .filter(({ ratio }) => ratio < least)
    expect(failing).toEqual([])
  })

  test('lets every edge and symbol be seen', () => {
    const failing = shapePairs.flatMap(([ground, shapes]) => shapes.map((shape) => ({ pair: `${shape} on ${ground}`, ratio: contrastOf(colour(list, shape), colour(list, ground)) })))
      .filter(({ ratio }) => ratio < 3)
    expect(failing).toEqual([])
  })
})

test('night is the same by the device and by the switch', () => {
  expect(lists['night by the device']).toEqual(lists.night)
})

test('night has no bright surface and no cold one, so that eyes stay adapted', () => {
  for (const name of ['paper', 'sheet', 'sunk', 'hover', 'chosen', 'line']) {
    const hex = colour(lists.night, name)
    expect(luminanceOf(hex), name).toBeLessThan(0.035)
    expect(Number.parseInt(hex.slice(1, 3), 16), name).toBeGreaterThanOrEqual(Number.parseInt(hex.slice(5, 7), 16))
  }
  expect(luminanceOf(colour(lists.night, 'ink'))).toBeLessThan(0.6)
})

test('only water is blue', () => {
  for (const list of Object.values(lists)) {
    for (const [name, hex] of Object.entries(list)) {
      const [red = 0, , blue = 0] = [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16))
      expect(blue > red + 4, `${name} ${hex}`).toBe(name.startsWith('water') && !name.startsWith('on-'))
    }
  }
})

describe('names on the map over the hill shade', () => {
  const over = (hex: string, shade: number) => `#${[1, 3, 5].map((at) => Math.round(parseInt(hex.slice(at, at + 2), 16) * (1 - SHADE_STRENGTH) + shade * SHADE_STRENGTH).toString(16).padStart(2, '0')).join('')}`
  for (const [list, colours] of Object.entries(lists)) {
    test(`${list}: text on paper under the darkest and the lightest shade keeps 4.5 to 1`, () => {
      for (const shade of [0, 255])
        for (const ink of ['ink', 'ink-quiet', 'water']) expect(contrastOf(colours[ink]!, over(colours['paper']!, shade)), `${ink} under ${shade}`).toBeGreaterThanOrEqual(4.5)
    })
  }
})
