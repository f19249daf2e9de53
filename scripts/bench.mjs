/** npm run bench: every measurement in tests/bench, one after the other so that none disturbs another; at the end all ratios once more. */
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { ensureBuild } from './house/build.mjs'
import { inRoot } from './house/places.mjs'
import { runTypeScript } from './house/run-typescript.mjs'
import { PlainError, runMain, say } from './house/say.mjs'
import { setUpTools } from './house/set-up.mjs'

const folder = inRoot('tests', 'bench')

/** Every ratio that was written, a line each. */
function ratioTable(file) {
  if (!existsSync(file)) return []
  return readFileSync(file, 'utf8').split('\n').filter(Boolean).map((text) => {
    const { bench, name, value, of } = JSON.parse(text)
    return `${String(bench ?? '').padEnd(10)}${String(name).padEnd(78)}${Number(value).toFixed(value < 100 ? 2 : 0).padStart(9)}×${of === undefined ? '' : ` ${of}`}`
  })
}

await runMain(async () => {
  await setUpTools()
  const wanted = process.argv.slice(2)
  const files = (existsSync(folder) ? readdirSync(folder) : [])
    .filter((name) => name.endsWith('.bench.ts'))
    .filter((name) => wanted.length === 0 || wanted.includes(name.replace(/\.bench\.ts$/, '')))
    .sort()
  if (files.length === 0) throw new PlainError(wanted.length > 0 ? `There is no ${wanted.join(', ')} to measure in tests/bench.` : 'There is nothing to measure in tests/bench.')
  // Those in a browser measure the app as it is built.
  if (files.some((name) => readFileSync(path.join(folder, name), 'utf8').includes('startServer'))) await ensureBuild()
  const scratch = mkdtempSync(path.join(tmpdir(), 'millrace-bench-'))
  const ratios = path.join(scratch, 'ratios')
  const begun = performance.now()
  try {
    for (const name of files) {
      say(`\n— ${name}`)
      const { code } = await runTypeScript([`${folder}/${name}`], { env: { MILLRACE_RATIOS: ratios, MILLRACE_BENCH: name.replace(/\.bench\.ts$/, '') } })
      if (code !== 0) throw new PlainError(`${name} ended with code ${code}.`)
    }
    const table = ratioTable(ratios)
    if (table.length > 0) say(`\n— ratios, each taken within one run on this machine\n${table.join('\n')}`)
  } finally {
    rmSync(scratch, { recursive: true, force: true })
  }
  say(`\n${files.length} measurements in ${Math.round((performance.now() - begun) / 1000)} s.`)
})
