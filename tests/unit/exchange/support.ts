import { readFileSync } from 'node:fs'
import path from 'node:path'
import { guessColumns, understand, type FoundFile, type ItemList, type Mapping, type Target, type Understood } from '@/lib/exchange'
import { readPlaces } from '@/lib/exchange/read-places'
import { smallBundle } from '@/tests/fixtures/bundle'

const folder = path.resolve(import.meta.dirname, '../../fixtures/exchange')

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text)
export const read = (bytes: Uint8Array | string) => readPlaces(typeof bytes === 'string' ? bytesOf(bytes) : bytes, { unzipKml: () => Promise.resolve([]) })

export async function readFixture(name: string): Promise<FoundFile> {
  const file = await read(readFileSync(path.join(folder, name)))
  if ('code' in file) throw new Error(JSON.stringify(file))
  return file
}

export const codeOf = async (bytes: Uint8Array | string): Promise<string | undefined> => {
  const file = await read(bytes)
  return 'code' in file ? file.code : undefined
}

/** A district with one station, pond, draft site and barn, and a plan there. */
export const target = (): Target => { const { district, plan } = smallBundle(); return { district, plan } }

export const guess = (file: FoundFile, list: ItemList, isMetric = false): Mapping['columns'] =>
  guessColumns(file.columns, { list, isMetric, features: file.features, labelOf: (path) => path })

export const understood = (file: FoundFile, mapping: Partial<Mapping> & { list: ItemList }, into: Target = target()): Understood =>
  understand(file, { target: into, mapping: { decimal: file.decimal, columns: guess(file, mapping.list), ...mapping }, nameOf: (list, at) => `${list} ${at}` })

/** Each problem as a line: place, column, code and the text it is about. */
export const lines = ({ problems }: Understood): string[] =>
  problems.map(({ at, column, issue: { code, values } }) => [at, column, code, values.text].filter((part) => part !== undefined).join(' | '))
