import path from 'node:path'

/** The ground: each may import those before it. */
const GROUND = ['units', 'written-units', 'middle-of', 'calendar', 'evidence', 'issue', 'random', 'geo'] as const
const NUMBERS = ['hydraulics', 'terrain', 'osm', 'demand', 'relay', 'priming', 'shuttle', 'roads'] as const
const LADDER = ['plan', 'exchange', 'supply', 'doubt', 'advise', 'exercise', 'field-log', 'review', 'report', 'book'] as const

function allowedOf(): Map<string, ReadonlySet<string>> {
  const allowed = new Map<string, ReadonlySet<string>>()
  GROUND.forEach((name, at) => allowed.set(name, new Set(GROUND.slice(0, at))))
  for (const name of NUMBERS) allowed.set(name, new Set([...GROUND, 'hydraulics']))
  allowed.set('roads', new Set([...GROUND, 'hydraulics', 'osm']))
  LADDER.forEach((name, at) => allowed.set(name, new Set([...GROUND, ...NUMBERS, ...LADDER.slice(0, at)])))
  return allowed
}

const ALLOWED = allowedOf()

/** Part of lib/ that a file belongs to: its folder, or the file itself at the top. */
export const partOf = (file: string): string => file.replace(/^lib\//, '').split('/')[0]?.replace(/\.ts$/, '') ?? ''

/**
 * What is wrong with an import inside lib/, or undefined.
 *
 * @param file      importing file, from the root of the project
 * @param specifier what it imports, as written
 */
export function findOrderBreach(file: string, specifier: string): string | undefined {
  if (!specifier.startsWith('.')) return undefined
  const target = path.posix.join(path.posix.dirname(file), specifier)
  if (!target.startsWith('lib/')) return `${file} leaves lib/ for ${specifier}`
  const from = partOf(file)
  const to = partOf(target)
  if (from === to) return undefined
  const allowed = ALLOWED.get(from)
  if (!allowed) return `${file} is in lib/${from}, which has no place in the order of folders`
  if (!allowed.has(to)) return `${file} imports ${specifier}: ${from} stands before ${to}`
  return undefined
}
