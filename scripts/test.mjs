/**
 * npm test: everything that must hold, from a bare clone, in one command.
 *
 * Lint and types count as one check each; the last line is the sum of all checks. A stage that
 * fails does not keep the next from running, unless the next cannot run without it.
 */
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs'
import { ensureBuild } from './house/build.mjs'
import { inRoot } from './house/places.mjs'
import { runNode } from './house/run.mjs'
import { PlainError, runMain, say } from './house/say.mjs'
import { setUpTools } from './house/set-up.mjs'

const reports = inRoot('test-results-data', 'reports')
const unitReport = `${reports}/vitest.json`
const journeyReport = `${reports}/playwright.json`
const bin = (name, file) => inRoot('node_modules', name, ...file.split('/'))

const readReport = (file) => (existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : undefined)

/** One check that passes or fails as a whole; what it printed is shown when it has ended, for another may print meanwhile. */
const single = async (args) => {
  const { code, output } = await runNode(args, { quiet: true })
  if (output.trim() !== '') say(output.trimEnd())
  return code === 0 ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 }
}

/** A runner that failed without a failed test, or ran none, still counts as one failure. */
const counted = (code, passed, failed) => ({ passed, failed: failed === 0 && (code !== 0 || passed === 0) ? 1 : failed })

async function lint() {
  return single([bin('eslint', 'bin/eslint.js'), '.', '--max-warnings', '0'])
}

async function types() {
  return single([bin('typescript', 'bin/tsc'), '--noEmit'])
}

async function units() {
  const { code } = await runNode([
    bin('vitest', 'vitest.mjs'), 'run', '--reporter=default', '--reporter=json', `--outputFile.json=${unitReport}`,
  ])
  const report = readReport(unitReport)
  const skipped = (report?.numPendingTests ?? 0) + (report?.numTodoTests ?? 0)
  if (skipped > 0) say(`${skipped} tests were left out: each counts as failed`)
  return counted(code, report?.numPassedTests ?? 0, (report?.numFailedTests ?? 0) + skipped)
}

async function build() {
  await ensureBuild()
  return { passed: 0, failed: 0 }
}

async function journeys() {
  const { ensureBrowser } = await import('./house/browser.mjs')
  const browser = await ensureBrowser()
  const { code } = await runNode([bin('@playwright', 'test/cli.js'), 'test', '--reporter=list,json'], {
    env: { MILLRACE_BROWSER: browser, PLAYWRIGHT_JSON_OUTPUT_NAME: journeyReport },
  })
  const { expected = 0, unexpected = 0, flaky = 0, skipped = 0 } = readReport(journeyReport)?.stats ?? {}
  if (skipped > 0) say(`${skipped} journeys did not run: each counts as failed`)
  return counted(code, expected, unexpected + flaky + skipped)
}

/** The reading of the code, each one process of one core: lint goes on while the others follow each other. */
const lintStage = ['lint', lint]
const typesStage = ['types', types]
const buildStage = ['production build', build]
const unitStage = ['unit, reference, property, golden and integration tests', units]
const journeyStage = ['journeys in a browser', journeys]

function reasonOf(error) {
  if (!(error instanceof PlainError)) return error?.stack ?? String(error)
  return [error.details, error.message].filter(Boolean).join('\n')
}

/** Runs one stage to its end, whatever becomes of it. */
async function ended([name, work]) {
  say(`\n— ${name}`)
  const began = Date.now()
  let isBroken = false
  const { passed, failed } = await work().catch((error) => {
    say(reasonOf(error))
    isBroken = true
    return { passed: 0, failed: 1 }
  })
  return { line: `${name}: ${passed} passed, ${failed} failed, ${((Date.now() - began) / 60_000).toFixed(1)} min`, passed, failed, isBroken }
}

await runMain(async () => {
  process.env.MILLRACE_BUILD = '.next-test'
  const started = Date.now()
  await setUpTools()
  rmSync(reports, { recursive: true, force: true })
  mkdirSync(reports, { recursive: true })

  const linting = ended(lintStage)
  const read = [await ended(typesStage), await ended(buildStage), await linting]
  const tested = [await ended(unitStage)]
  if (read[1].isBroken) tested.push({ line: `${journeyStage[0]}: could not run without the build`, passed: 0, failed: 1 })
  else tested.push(await ended(journeyStage))

  const all = [...read, ...tested]
  const [passed, failed] = ['passed', 'failed'].map((kind) => all.reduce((sum, stage) => sum + stage[kind], 0))
  say(`\n${all.map(({ line }) => line).join('\n')}\nall: ${((Date.now() - started) / 60_000).toFixed(1)} min`)
  say(`${passed} passed, ${failed} failed`)
  return failed === 0 && passed > 0 ? 0 : 1
})
