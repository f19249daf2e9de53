/**
 * Writes edits to a district one after the other, for as long as it lives, and says each one's number
 * once it is acknowledged.
 *
 *   node writer.mjs FILE DISTRICT RUN      this file, bundled
 */
import { writeSync } from 'node:fs'
import { getDocument } from '@/app/_server/documents'
import { appendEdits } from '@/app/_server/edits'
import { openDatabase } from '@/app/_server/open-database'
import { edit } from './documents'

const [file = '', docId = '', run = ''] = process.argv.slice(2)
const database = await openDatabase(file)
let { sequence } = await getDocument(database, docId)
writeSync(1, 'ready\n')
for (;;) {
  const name = `${run}-${sequence + 1}`
  const notes = `${name} ${'x'.repeat(3000)}`
  const item = { id: `pond-${sequence % 20}`, name, kind: 'pond', point: { lat: 50, lon: 11 }, notes }
  const appended = await appendEdits(database, docId, [edit(name, sequence, { kind: 'addItem', collection: 'sources', item }, docId)])
  sequence = appended.sequence
  writeSync(1, `${sequence} edit-${name}\n`)
}
