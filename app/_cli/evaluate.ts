import { readdir, readFile } from 'node:fs/promises'
import { basename } from 'node:path'
import { parseArgs } from 'node:util'
import { sayIssue, say, type UnitSystem } from '@/app/_text'
import { flowDoubt, NIGHT_COUNT, prepareDoubt, SEED } from '@/lib/doubt'
import { issue, type Issue } from '@/lib/issue'
import { isBundle, namesOf, readBundle, type Bundle } from '@/lib/plan'
import { compilePlan, evaluateCompiled, resolveLegs } from '@/lib/supply'
import { resultText } from './result-text'
import { roadsFromFile } from './roads-from-file'

/**
 * The headless door: a bundle in, its answer out. It needs no database and no network.
 *
 *   npm run -s evaluate -- bundle.json          the result as JSON
 *   npm run -s evaluate -- --text bundle.json   for people; --metric in metric units
 *   npm run -s evaluate -- --demo               the shipped example plans, as a JSON array
 *   … --roads FILE.osm.pbf                      finds the ways anew on that road data
 *   … --dependable [--nights 400] [--seed 1]    with the flow that is held in nine nights of ten
 *
 * Exit 0: there is an answer. Exit 2: there is none, and one sentence on standard error says what stands in
 * the way and where; a plan that was read but is blocked still prints its result, with null figures.
 */
const MOST_BYTES = 64 * 1024 * 1024
const demoFolder = new URL('../../public/demo/bundles/', import.meta.url)

class BadInput extends Error {}

function refuse(problem: Issue): never {
  throw new BadInput(sayIssue(problem, () => undefined, 'us'))
}

async function bundleFromFile(file: string | URL): Promise<Bundle> {
  const name = basename(String(file))
  const text = await readFile(file, 'utf8').catch((error: NodeJS.ErrnoException) => refuse(issue('file-missing', 'block', [], { file: name, reason: error.code ?? '' })))
  if (text.length > MOST_BYTES) refuse(issue('file-too-big', 'block', [], { file: name, size: text.length, limit: MOST_BYTES }))
  let json: unknown
  try {
    json = JSON.parse(text)
  } catch (error) {
    refuse(issue('file-not-json', 'block', [], { file: name, reason: (error as Error).message }))
  }
  const read = readBundle(json)
  if (isBundle(read)) return read
  const [first] = read
  throw new BadInput(`${name}: ${read.length > 1 ? `${say('issue.first-of', { count: read.length })} ` : ''}${first ? sayIssue(first, () => undefined, 'us') : ''}`)
}

const MOST_NIGHTS = 100_000

function wholeOf(text: string | undefined, otherwise: number, low: number, high: number): number {
  if (text === undefined) return otherwise
  const value = Number(text)
  if (text.trim() === '' || !Number.isInteger(value) || value < low || value > high) throw new BadInput(say('issue.evaluate-usage'))
  return value
}

async function main(): Promise<void> {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: { text: { type: 'boolean' }, metric: { type: 'boolean' }, demo: { type: 'boolean' }, roads: { type: 'string' }, dependable: { type: 'boolean' }, nights: { type: 'string' }, seed: { type: 'string' } },
  })
  const files: (string | URL)[] = values.demo
    ? (await readdir(demoFolder)).filter((name) => name.endsWith('.json')).sort().map((name) => new URL(name, demoFolder))
    : positionals
  if (files.length === 0) throw new BadInput(say('issue.evaluate-usage'))
  const roads = values.roads === undefined ? undefined : await roadsFromFile(values.roads).catch((error: Issue | Error) => ('code' in error && 'values' in error ? refuse(error) : Promise.reject(error)))

  const doubt = values.dependable ? { nightCount: wholeOf(values.nights, NIGHT_COUNT, 1, MOST_NIGHTS), seed: wholeOf(values.seed, SEED, 0, 2 ** 31 - 1) } : undefined

  const answers = []
  for (const file of files) {
    let bundle = await bundleFromFile(file)
    if (roads) {
      bundle = { ...bundle, district: { ...bundle.district, roads: roads.dataSet }, legs: [] }
      bundle = { ...bundle, legs: resolveLegs(bundle, roads.find(bundle.district.roadNotes)).legs }
    }
    const compiled = compilePlan(bundle)
    const result = evaluateCompiled(compiled)
    const model = doubt && prepareDoubt(compiled)
    answers.push({ bundle, result: model ? { ...result, ...flowDoubt(model, doubt) } : result })
  }
  const system: UnitSystem = values.metric ? 'metric' : 'us'
  const output = values.text
    ? answers.map(({ bundle, result }) => resultText(result, namesOf(bundle), system)).join('\n\n')
    : JSON.stringify(values.demo || answers.length > 1 ? answers.map(({ result }) => result) : answers[0]?.result, null, 2)
  process.stdout.write(`${output}\n`)
  for (const { bundle, result } of answers) {
    const blocking = result.issues.find(({ severity }) => severity === 'block')
    if (!blocking || process.exitCode === 2) continue
    const names = namesOf(bundle)
    process.stderr.write(`${result.planName}: ${sayIssue(blocking, (id) => names.get(id), system)}\n`)
    process.exitCode = 2
  }
}

main().catch((error: Error & { code?: string }) => {
  if (error instanceof BadInput || error.code?.startsWith('ERR_PARSE_ARGS')) {
    process.stderr.write(`${error.message.split('\n')[0]}\n`)
    process.exitCode = 2
  } else throw error
})
