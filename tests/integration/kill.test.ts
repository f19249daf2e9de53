import { spawn } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import path from 'node:path'
import { build } from 'esbuild'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { checkedDocument, createDocument, getDocument } from '@/app/_server/documents'
import { listEdits } from '@/app/_server/edits'
import { openDatabase } from '@/app/_server/open-database'
import { applyEdit, type EditableDocument } from '@/lib/plan'
import { district } from './support/documents'
import { root, scratchDatabase, type Scratch } from './support/scratch-database'

/** Kills in one run: 25, or MILLRACE_KILLS. */
const KILLS = Number(process.env.MILLRACE_KILLS ?? 25)

let scratch: Scratch
let bundleFolder: string
beforeAll(async () => {
  scratch = await scratchDatabase()
  await createDocument(scratch.database, district())
  bundleFolder = await bundleWriter()
})
afterAll(async () => {
  rmSync(bundleFolder, { recursive: true, force: true })
  await scratch.remove()
})

/** One file starts faster than many. It stands inside the project, where its packages are found. */
async function bundleWriter(): Promise<string> {
  const place = path.join(root, 'test-results-data')
  mkdirSync(place, { recursive: true })
  const folder = mkdtempSync(path.join(place, 'writer-'))
  await build({
    entryPoints: [path.join(import.meta.dirname, 'support/write-until-killed.ts')],
    outfile: path.join(folder, 'writer.mjs'),
    bundle: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
    alias: { '@': root },
  })
  return folder
}

/**
 * Lets a process write until it is killed in the middle of its work.
 *
 * @param lineCount how many acknowledged edits to wait for before the kill
 * @returns ids of the edits it had acknowledged, by their number
 */
function writeAndKill(run: number, lineCount: number, wait_ms: number): Promise<Map<number, string>> {
  return new Promise((resolve, reject) => {
    const args = [path.join(bundleFolder, 'writer.mjs'), scratch.file, 'D1', `run${run}`]
    const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'pipe'] })
    let output = ''
    let errors = ''
    let isDoomed = false
    child.stderr.on('data', (part: Buffer) => (errors += part.toString()))
    child.stdout.on('data', (part: Buffer) => {
      output += part.toString()
      if (isDoomed || output.split('\n').length <= lineCount) return
      isDoomed = true
      setTimeout(() => child.kill('SIGKILL'), wait_ms)
    })
    child.on('close', (_code, signal) => {
      if (signal !== 'SIGKILL') reject(new Error(`the writer ended by itself: ${errors}`))
      // The last line may be cut in the middle; it was not said in full, so it was not acknowledged.
      const lines = output.split('\n').slice(1, -1)
      resolve(new Map(lines.map((line) => [Number(line.split(' ')[0]), line.split(' ')[1] ?? ''])))
    })
  })
}

test(`killed ${KILLS} times while writing, it loses no acknowledged edit and leaves no half-written document`, async () => {
  let acknowledgedCount = 0
  for (let run = 1; run <= KILLS; run += 1) {
    const acknowledged = await writeAndKill(run, 1 + (run % 5), (run * 7) % 23)
    acknowledgedCount += acknowledged.size
    const database = await openDatabase(scratch.file)
    expect(await database.$queryRaw`PRAGMA quick_check`).toEqual([{ quick_check: 'ok' }])
    const { doc, sequence } = await getDocument(database, 'D1')
    const history = await listEdits(database, 'D1', Math.max(0, sequence - 500))
    await database.$disconnect()

    const kept = new Map(history.map((one) => [one.sequence, one.id]))
    for (const [number, id] of acknowledged) expect(kept.get(number), `run ${run}`).toBe(id)
    expect(history.at(-1)?.sequence ?? 0).toBe(sequence)
    checkedDocument(doc)
  }
  expect(acknowledgedCount).toBeGreaterThanOrEqual(KILLS)

  const rows = await scratch.database.edit.findMany({ where: { docId: 'D1' }, orderBy: { sequence: 'asc' } })
  expect(rows.map(({ sequence }) => sequence)).toEqual(rows.map((_, index) => index + 1))
  const replayed = rows.reduce<EditableDocument>((doc, row) => {
    const applied = applyEdit(doc, JSON.parse(row.body) as Parameters<typeof applyEdit>[1])
    if ('code' in applied) throw new Error(applied.code)
    return applied.doc
  }, district())
  expect((await getDocument(scratch.database, 'D1')).doc).toEqual(replayed)
}, 60_000 + KILLS * 30_000)
