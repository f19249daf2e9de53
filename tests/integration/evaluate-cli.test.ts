import { execFile } from 'node:child_process'
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { dependableFlow, prepareDoubt } from '@/lib/doubt'
import { isBundle, readBundle } from '@/lib/plan'
import { compilePlan, evaluatePlan, resultSchema } from '@/lib/supply'
import { smallBundle, smallJson } from '@/tests/fixtures/bundle'

const root = fileURLToPath(new URL('../../', import.meta.url))
let folder = ''
beforeAll(async () => { folder = await mkdtemp(path.join(tmpdir(), 'evaluate-')) })
afterAll(async () => { await rm(folder, { recursive: true, force: true }) })

type Run = { code: number; stdout: string; stderr: string }

/** Runs the command the way `npm run -s evaluate` does. */
const run = (...args: string[]): Promise<Run> =>
  new Promise((resolve) => {
    execFile(process.execPath, ['scripts/evaluate.mjs', ...args], { cwd: root, maxBuffer: 64e6 }, (error, stdout, stderr) => {
      resolve({ code: error ? Number(error.code) : 0, stdout, stderr })
    })
  })

async function fileOf(content: unknown, name = 'bundle.json'): Promise<string> {
  const file = path.join(folder, name)
  await writeFile(file, typeof content === 'string' ? content : JSON.stringify(content))
  return file
}

describe('the headless door', () => {
  it('prints the result of a bundle as JSON, the same as the core gives', async () => {
    const { code, stdout, stderr } = await run(await fileOf(smallJson()))
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' })
    expect(JSON.parse(stdout)).toEqual(evaluatePlan(smallBundle()))
  })

  it('prints the shipped examples as an array: at least one meets its need, one falls short', async () => {
    const { code, stdout } = await run('--demo')
    expect(code).toBe(0)
    const results = resultSchema.array().parse(JSON.parse(stdout))
    const met = results.map(({ sustainable_gpm, needed_gpm }) => (sustainable_gpm ?? 0) >= (needed_gpm ?? Infinity))
    expect(met).toContain(true)
    expect(met).toContain(false)
  })

  it('says it in words, in either unit system', async () => {
    const file = await fileOf(smallJson())
    const us = await run('--text', file)
    expect(us.stdout).toMatch(/Short by 25\sgpm of the 250\sgpm needed/)
    expect(us.stdout).toMatch(/Not yet tested for doubt: expected 225\sgpm, needed 250\sgpm\. First water \d+\smin after dispatch, supply ready 13\smin/)
    expect((await run('--text', '--metric', file)).stdout).toMatch(/needed [\d,]+\sL\/min/)
  })

  it('gives the dependable flow when asked, the same as the core for the same seed', async () => {
    const file = await fileOf(smallJson())
    const model = prepareDoubt(compilePlan(smallBundle()))
    const { code, stdout } = await run('--dependable', '--nights', '40', '--seed', '7', file)
    expect(code).toBe(0)
    const { dependable } = resultSchema.parse(JSON.parse(stdout))
    expect(dependable).toEqual(model && dependableFlow(model, { nightCount: 40, seed: 7 }))
    expect((await run('--text', '--dependable', '--nights', '40', file)).stdout).toMatch(/Dependable \d+\sgpm, expected 225\sgpm, needed 250\sgpm\. First water \d+\smin after dispatch, supply ready 13\smin/)
    expect((await run('--dependable', '--nights', 'many', file)).code).toBe(2)
  })

  it('finds the ways anew on a map file, and they carry the tender', async () => {
    const trial = path.join(root, 'tests/data/trial-plan.json')
    const { code, stdout } = await run('--roads', path.join(root, 'tests/data/north-bayreuth.osm.pbf'), trial)
    expect(code).toBe(0)
    const result = resultSchema.parse(JSON.parse(stdout))
    expect(result.legs.map(({ by }) => by)).toEqual(result.legs.map(() => 'routed'))
    // Straight line between the sites is 0.66 mi; the road cannot be shorter.
    const leg = result.legs.find(({ fromId, load }) => fromId === 'trial-f1' && load === 'full')
    expect(leg?.distance_mi).toBeGreaterThan(0.66)
    // A round by hand: positions and clearing 195 s, dump and fill by load and rate, the way there and back.
    const [tender] = result.tenders
    const round_s = 195 + ((tender?.usable_gal ?? 0) / 1000) * 60 * (1 + 1.1) + (tender?.toFill_s ?? 0) + (tender?.toDump_s ?? 0)
    expect(tender?.cycle_s).toBeCloseTo(round_s, 3)
    const read = readBundle(JSON.parse(await readFile(trial, 'utf8')))
    expect(isBundle(read) && evaluatePlan(read).legs.every(({ isStraight }) => isStraight)).toBe(true)
  })

  it.each<[string, () => Promise<string[]>, RegExp]>([
    ['no file', () => Promise.resolve([]), /Name a bundle file/],
    ['an unknown option', () => Promise.resolve(['--colour']), /colour/],
    ['a file that is not there', () => Promise.resolve([path.join(folder, 'nowhere.json')]), /^nowhere\.json cannot be read/],
    ['a file that is not JSON', async () => [await fileOf('{ "format": ', 'cut.json')], /^cut\.json is not readable as JSON/],
    ['a file of another kind', async () => [await fileOf({ type: 'FeatureCollection' }, 'other.json')], /other\.json: .*"format" must be "millrace-plan"/],
    ['a newer version', async () => [await fileOf({ format: 'millrace-plan', version: 9 }, 'new.json')], /new\.json: .*newer version/],
    ['a number that is a word', async () => [await fileOf(smallJson({ 'district.draftSites.0.lift_ft': 'ten' }))], /draftSites\[0\] \(Mill pond bank\)\.lift_ft must be a number/],
    ['a negative tank', async () => [await fileOf(smallJson({ 'district.apparatus.2.tank_gal': -5 }))], /\(Tender 1\)\.tank_gal must be 0 or more/],
    ['a huge flow', async () => [await fileOf(smallJson({ 'district.hazards.0.needed_gpm': 1e9 }))], /\(Barn\)\.needed_gpm must be 20000 or less/],
    ['a plan with no fill site', async () => [await fileOf(smallJson({ 'plan.fillSites': [] }))], /no fill site/],
    ['a tender with no tank', async () => [await fileOf(smallJson({ 'district.apparatus.2.tank_gal': undefined }))], /Tender 1 has no tank size/],
    ['a lift no pump can reach', async () => [await fileOf(smallJson({ 'district.draftSites.0.lift_ft': 33 }))], /Mill pond fill: a lift of 33\sft is 7\.\d+\sft more/],
    ['roads that are no map', async () => ['--roads', await fileOf('hello', 'roads.pbf'), await fileOf(smallJson())], /not OpenStreetMap data/],
  ])('ends with 2 and one sentence on %s', async (_, args, sentence) => {
    const { code, stderr } = await run(...(await args()))
    expect(code).toBe(2)
    expect(stderr).toMatch(sentence)
    expect(stderr.trim().split('\n')).toHaveLength(1)
  })
})
