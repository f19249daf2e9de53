import path from 'node:path'

/** The ground: each may import those before it. */
const GROUND = ['units', 'written-units', 'middle-of', 'calendar', 'evidence', 'issue', 'random', 'geo'] as const
const NUMBERS = ['hydraulics', 'terrain', 'osm', 'demand', 'relay', 'priming', 'shuttle', 'roads'] as const
const LADDER = ['plan', 'exchange', 'supply', 'doubt', 'advise', 'exercise', 'field-log', 'review', 'book'] as const

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
const partOf = (file: string): string => file.replace(/^lib\//, '').split('/')[0]?.replace(/\.ts$/, '') ?? ''

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

/** Folders of app/ from the ground up: each may import those before it. What is not listed, pages and routes, stands last. */
const APP_LADDER = [
  '_look', '_text', '_client', '_worker', '_live', '_links', '_ui', '_charts', '_fields', '_map', '_shell', '_find', '_frame',
  '_survey', '_resources', '_plan', '_exchange', '_compare', '_device', '_devices', '_help', 'drill',
  '_draft', '_doubt', '_advice', '_handbook', '_hose', '_log', '_review', '_book', '_exercise', '_seat',
  '_server', '_demo', '_cli', '_home',
] as const
/** Those that touch the machine may use what the commands use. */
const BESIDE_SCRIPTS = ['_server', '_devices', '_cli']

const rungOf = (file: string): number => {
  const at = (APP_LADDER as readonly string[]).indexOf(file.split('/')[1] ?? '')
  return at < 0 ? APP_LADDER.length : at
}

/**
 * What is wrong with an import of a file of app/, or undefined.
 *
 * @param file      importing file, from the root of the project
 * @param specifier what it imports, as written
 */
export function findAppBreach(file: string, specifier: string): string | undefined {
  if (!specifier.startsWith('.') && !specifier.startsWith('@/')) return undefined
  const target = specifier.startsWith('@/') ? specifier.slice(2) : path.posix.join(path.posix.dirname(file), specifier)
  const folder = file.split('/')[1] ?? ''
  if (folder.startsWith('_') && rungOf(file) === APP_LADDER.length) return `${file} is in app/${folder}, which has no place in the order of folders`
  if (target.startsWith('scripts/')) return BESIDE_SCRIPTS.includes(folder) ? undefined : `${file} imports ${specifier}: app/${folder} does not use the commands' files`
  if (/^(?:tests|e2e)\//.test(target)) return `${file} imports ${specifier}: the program does not use its tests`
  if (!target.startsWith('app/') || target.split('/')[1] === folder) return undefined
  return rungOf(target) <= rungOf(file) ? undefined : `${file} imports ${specifier}: ${folder} stands before ${target.split('/')[1]}`
}
