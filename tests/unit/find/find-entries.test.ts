import { describe, expect, test } from 'vitest'
import { findEntries } from '@/app/_find/find-entries'
import { matchScore } from '@/app/_find/match-entries'
import { say } from '@/app/_text'
import { smallBundle } from '@/tests/fixtures/bundle'

describe('what a typed word finds', () => {
  const places: readonly (readonly [string, string, string, number])[] = [
    ['Mill pond', 'source', 'mill pond', 1],
    ['Mill pond', 'source', 'pond', 0.8],
    ['Mill pond', 'source · Small valley', 'val', 0.3],
    ['Mill pond', 'source', 'mill tender', 0],
    ['Étang du Moulin', 'source', 'etang', 0.9],
    ['Treadmill', 'plan', 'mill', 0.5],
  ]
  test.each(places)('%s (%s) for "%s": %d', (label, note, typed, score) => {
    expect(matchScore(label, note, typed)).toBeCloseTo(score)
  })

  test('nothing typed leaves nothing out', () => {
    expect(matchScore('Mill pond', '', '  ')).toBe(1)
  })

  test('a question is found by what it asks for, and a word of many by its one', () => {
    const fillers = new Set(['how', 'long', 'to', 'the'])
    expect(matchScore('Prime drill', '', 'how long to prime?', fillers)).toBeCloseTo(0.9)
    expect(matchScore('Prime drill', '', 'how long to prime?')).toBe(0)
    expect(matchScore('Covered bridge', 'road note', 'bridges')).toBeCloseTo(0.8)
    // A name that begins with such a word is still found by it.
    expect(matchScore('Long Ridge', 'road note', 'long', fillers)).toBeCloseTo(0.9)
    expect(matchScore('Mill pond', 'source', 'how long', fillers)).toBe(0)
  })
})

describe('what there is to find', () => {
  const { district, plan } = smallBundle()
  const other = { ...district, id: 'other', name: 'Other valley' } as typeof district
  const entry = (kind: 'district' | 'plan' | 'exercise', id: string, name: string, districtId?: string) => ({ id, kind, name, sequence: 0, ...(districtId !== undefined && { districtId }) })
  const entries = [
    entry('plan', 'far', 'Far plan', 'other'), entry('plan', plan.id, plan.name, district.id), entry('exercise', 'ex', 'Night drill', district.id),
    entry('district', 'other', other.name), entry('district', district.id, district.name),
    { ...entry('plan', 'gone', 'Gone plan', district.id), deletedAt: '2026-01-01T00:00:00Z' },
  ]
  const found = findEntries({ entries, districts: [other, district], plans: [plan], here: { districtId: district.id, planId: plan.id } })
  const labels = found.map(({ label }) => label)

  test('every place, unit and piece of equipment, each at its own card', () => {
    for (const item of [...district.sources, ...district.draftSites, ...district.hazards, ...district.stations])
      expect(found.find(({ id, href }) => id === item.id && href.includes(district.id))?.href).toBe(`/district/${district.id}/survey?item=${item.id}`)
    for (const item of [...district.apparatus, ...district.equipment])
      expect(found.find(({ id, href }) => id === item.id && href.includes(district.id))?.href).toBe(`/district/${district.id}/resources?item=${item.id}`)
  })

  test('plans and exercises, those of the district on screen first; nothing that was put away', () => {
    expect(labels.indexOf(plan.name)).toBeLessThan(labels.indexOf('Far plan'))
    expect(labels).toContain('Night drill')
    expect(labels).not.toContain('Gone plan')
  })

  test('the sites of the plan on screen open its card', () => {
    expect(found.find(({ id }) => id === plan.fillSites[0]?.id)?.href).toBe(`/district/${district.id}/plan/${plan.id}?part=fill`)
  })

  test('each has a key of its own, though a copied district holds the same ids', () => {
    expect(new Set(found.map(({ id }) => id)).size).toBeLessThan(found.length)
    expect(new Set(found.map(({ key }) => key)).size).toBe(found.length)
  })

  test('with no district on screen, no page of one', () => {
    const home = findEntries({ entries, districts: [], plans: [], here: {} })
    expect(home.filter(({ group }) => group === 'here')).toEqual([])
    // Those of each district are offered as elsewhere.
    expect(home.filter(({ id, href }) => id === 'screen-book' && href === `/district/${district.id}/book`)).toMatchObject([{ group: 'elsewhere', note: district.name }])
  })
})

describe('what is looked for by the usual words', () => {
  const { district, plan } = smallBundle()
  const found = findEntries({ entries: [], districts: [district], plans: [plan], here: { districtId: district.id, planId: plan.id } })
  const best = (typed: string) => found
    .map(({ label, note, also = '', href, act }) => ({ label, href, act, score: matchScore(label, `${note} ${also}`, typed) }))
    .filter(({ score }) => score > 0).sort((a, b) => b.score - a.score)

  test('is a screen, a page of the help, or something done at once', () => {
    expect(best('lift')[0]).toMatchObject({ label: 'Lift', href: '/help#figure-lift' })
    expect(best('friction').map(({ label }) => label)).toEqual(expect.arrayContaining(['Hose', 'Friction loss in hose']))
    for (const word of ['units', 'metric']) expect(best(word).map(({ act }) => act)).toContainEqual({ kind: 'units', system: 'metric' })
    for (const words of ['new plan', 'delete plan']) expect(best(words)[0]?.href).toBe(`/district/${district.id}/plan`)
    expect(best('undo')[0]?.act).toEqual({ kind: 'undo' })
    expect(best('tanker').map(({ label }) => label)).toEqual(expect.arrayContaining(['Tender 1', 'Tender 2', 'Resources']))
  })
})

describe('words that an officer would type', () => {
  const { district, plan } = smallBundle()
  const entries = [{ id: district.id, kind: 'district' as const, name: district.name, sequence: 0 }]
  const fillers = new Set(say('find.filler').split(' '))
  const from = (here: { districtId?: string; planId?: string }, typed: string) => findEntries({ entries, districts: [district], plans: [plan], here })
    .filter(({ label, note, also = '' }) => matchScore(label, `${note} ${also}`, typed, fillers) > 0).map(({ id }) => id)
  const asked: readonly (readonly [string, string])[] = [
    ['nurse', 'page-map'], ['nurse tender', 'page-map'], ['weight limit', 'screen-survey'], ['posted bridges', 'screen-survey'], ['relay pump', 'page-hose'], ['relay pumper', 'page-hose'], ['radio', 'screen-book'], ['radio channel', 'screen-book'],
    ['how long to prime', 'screen-drill'], ['priming', 'screen-drill'], ['print', 'screen-book'], ['preplan', 'screen-book'], ['dry hydrant', 'screen-survey'], ['drought', 'screen-survey'], ['mutual aid', 'page-request'], ['who to call', 'page-request'],
    ['insurance', 'page-handbook'], ['turnaround', 'page-handbook'], ['LDH', 'page-hose'], ['strainers', 'screen-resources'], ['jet siphon', 'screen-resources'], ['cavitation', 'figure-suction'], ['how high can I draft', 'sheet-highest'], ['offline', 'device'], ['backup', 'device'],
    ['tabletop', 'screen-exercise'], ['GPS', 'page-exchange'], ['friction loss', 'sheet-hose'], ['first due', 'screen-plan'], ['what if a pump breaks down', 'page-advice'],
  ]
  test.each(asked)('%s finds something wherever it is typed', (typed, id) => {
    for (const here of [{}, { districtId: district.id }, { districtId: district.id, planId: plan.id }]) expect(from(here, typed), JSON.stringify(here)).toContain(id)
  })
})
