import type { ReactNode } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { siteKinds, siteShapes } from '@/app/_look/site-shapes'
import { SiteSymbol } from '@/app/_look/site-symbol'
import { say } from '@/app/_text'
import type { UnitSystem } from '@/app/_text'
import { Card } from '@/app/_ui/card'
import { Caution } from '@/app/_ui/caution'
import { DataTable } from '@/app/_ui/data-table'
import { EvidenceChip } from '@/app/_ui/evidence-chip'
import { FigureTile } from '@/app/_ui/figure-tile'
import { IssueList } from '@/app/_ui/issue-list'
import { ObjectList } from '@/app/_ui/object-list'
import { Providers } from '@/app/_frame/providers'
import { QuantityField } from '@/app/_ui/quantity-field'
import { Shell } from '@/app/_frame/shell'
import { WorkingPanel } from '@/app/_ui/working-panel'
import { evidenceMarks } from '@/lib/evidence'
import { issue } from '@/lib/issue'
import type { Working } from '@/lib/supply/working'

const render = (node: ReactNode, system: UnitSystem = 'us'): string => renderToStaticMarkup(<Providers system={system} theme={undefined}>{node}</Providers>)
const nothing = (): void => undefined
const words = (markup: string): string => markup.replace(/<[^>]+>/g, ' ').replaceAll('\u00a0', ' ').replace(/\s+/g, ' ').trim()
const names = (id: string): string | undefined => (id === 'p1' ? 'Mill pond' : undefined)

describe('symbols of places', () => {
  test('differ from each other in outline and in letter', () => {
    expect(new Set(siteKinds.map((kind) => siteShapes[kind].path)).size).toBe(siteKinds.length)
    expect(new Set(siteKinds.map((kind) => siteShapes[kind].letter)).size).toBe(siteKinds.length)
  })

  test('are named where they stand alone, and decoration beside words', () => {
    expect(renderToStaticMarkup(<SiteSymbol kind="source" label="x" />)).toMatch(/role="img" aria-label="x"/)
    expect(renderToStaticMarkup(<SiteSymbol kind="source" />)).toContain('aria-hidden="true"')
  })
})

test('how a figure is known is told by letter, word and a shape of its own', () => {
  const chips = evidenceMarks.map((mark) => renderToStaticMarkup(<EvidenceChip mark={mark} />))
  for (const [index, mark] of evidenceMarks.entries()) expect(words(chips[index] ?? '')).toBe(`${say(`evidence.${mark}.letter`)} ${say(`evidence.${mark}`)}`)
  expect(new Set(chips.map((chip) => chip.replace(/<text.*/s, ''))).size).toBe(4)
})

describe('an entry of a quantity', () => {
  test('has a label, shows what was typed and says what it is in the units in use', () => {
    const markup = render(<QuantityField label={say('field.lift_ft')} unit="ft" value={2.5 / 0.3048} evidence={{ mark: 'measured', entered: '2.5 m' }} onCommit={nothing} />)
    expect(markup).toMatch(/<label[^>]*for="([^"]+)".*<input[^>]*id="\1"/s)
    expect(markup).toContain('value="2.5 m"')
    expect(words(markup)).toContain('= 8.2 ft')
    expect(words(markup)).toContain('measured')
  })

  test('that nobody has filled in shows what stands in, as such', () => {
    const markup = render(<QuantityField label={say('field.lift_ft')} unit="ft" value={undefined} standIn={{ value: 20, mark: 'handbook' }} onCommit={nothing} />, 'metric')
    expect(markup).toContain('placeholder="6.096"')
    expect(markup).toContain('value=""')
    expect(words(markup)).toContain('handbook')
  })
})

test('a card says whether it is open and hides what is closed', () => {
  const closed = renderToStaticMarkup(<Card title="a">body</Card>)
  expect(closed).toMatch(/aria-expanded="false" aria-controls="([^"]+)".*id="\1"[^>]*hidden/s)
  const open = renderToStaticMarkup(<Card title="a" startsOpen>body</Card>)
  expect(open).toContain('aria-expanded="true"')
  expect(open).not.toContain('hidden=""')
})

test('what a closed card holds is drawn when it is first opened, or where paper shows it', () => {
  expect(renderToStaticMarkup(<Card title="a">body</Card>)).not.toContain('body<')
  expect(renderToStaticMarkup(<Card title="a" startsOpen>body</Card>)).toContain('body')
  expect(renderToStaticMarkup(<Card title="a" onPaper="open">body</Card>)).toContain('>body<')
})

test('a figure with a working is a button that says whether it is open; one without is none', () => {
  expect(renderToStaticMarkup(<FigureTile label="a" value="b" isOpen panelId="p" onToggle={nothing} />)).toMatch(/<button[^>]*aria-expanded="true" aria-controls="p"/)
  expect(renderToStaticMarkup(<FigureTile label="a" value="b" />)).not.toContain('<button')
})

test('a working shows its inputs down to what somebody entered, each with how it is known', () => {
  const working: Working = {
    law: 'no-words-for-this', value: 4.31, unit: 'ft', source: 'handbook',
    inputs: [
      { symbol: 'lift_ft', value: 18, unit: 'ft', from: { itemId: 'p1', field: 'lift_ft', mark: 'measured', source: 'tape' } },
      { symbol: 'loss_ft', value: 2, unit: 'ft', from: { law: 'inner', value: 2, unit: 'ft', source: '', inputs: [{ symbol: 'coefficient', value: 0.0512, unit: '', from: { itemId: 'p1', field: 'c', mark: 'assumed', source: '' } }] } },
    ],
  }
  const text = words(render(<WorkingPanel title="t" working={working} names={names} />))
  for (const part of ['4.31 ft', 'handbook', '18 ft', 'measured', 'Mill pond, tape', 'computed', '0.0512', 'assumed']) expect(text).toContain(part)
})

test('issues stand worst first, each with its word', () => {
  const text = words(render(<IssueList names={names} issues={[issue('c', 'note'), issue('b', 'warn'), issue('a', 'block')]} />))
  const at = (['block', 'warn', 'note'] as const).map((severity) => text.indexOf(say(`issue.severity.${severity}`)))
  expect(at.every((place) => place >= 0)).toBe(true)
  expect([...at].sort((a, b) => a - b)).toEqual(at)
})

test('a list of places has one stop for the tab key and marks what is chosen', () => {
  const items = [{ id: 'a', name: 'A' }, { id: 'b', name: 'B' }, { id: 'c', name: 'C' }]
  const markup = renderToStaticMarkup(<ObjectList label="x" items={items} selectedId="b" onSelect={nothing} />)
  expect(markup.match(/tabindex="0"/gi)).toHaveLength(1)
  expect(markup).toMatch(/tabindex="0" aria-current="true"/i)
})

test('a table names its rows and columns and can be reached by keyboard', () => {
  const markup = renderToStaticMarkup(<DataTable caption="c" rows={[1]} rowKey={String} columns={[{ key: 'n', head: 'h', cell: String, sortBy: (n) => n }]} />)
  for (const part of ['<caption', 'scope="col"', 'scope="row"', 'aria-sort="none"', 'tabindex="0"']) expect(markup.toLowerCase()).toContain(part)
})

test('the frame has a way past the bar, and marks the screen one is on', () => {
  const markup = render(<Shell district={{ id: 'd 1', name: 'x' }} screen="plan">content</Shell>)
  expect(markup).toMatch(/<a[^>]*href="#content"/)
  expect(markup).toContain('<main id="content"')
  expect(markup).toMatch(/aria-current="page"[^>]*href="\/district\/d%201\/plan"|href="\/district\/d%201\/plan"[^>]*aria-current="page"/)
})

test('cautions defer to those who decide', () => {
  expect(words(renderToStaticMarkup(<Caution kinds={['planning-aid']} />))).toContain('authority having jurisdiction')
})
