import { builtinModules } from 'node:module'
import next from 'eslint-config-next/core-web-vitals'
import nextTypescript from 'eslint-config-next/typescript'
import { unitSuffix } from './scripts/lint/unit-suffix.mjs'

const millrace = { rules: { 'unit-suffix': unitSuffix } }

/** Matches packages by name, with whatever is imported from inside them. */
const packages = (...names) => `^(?:${names.join('|')})(?:/|$)`

const nodeModules = `^(?:node:.*|${builtinModules.filter((name) => !name.startsWith('_')).join('|')})$`
const frameworks = packages('next', 'react', 'react-dom', 'radix-ui', 'uplot', 'comlink', 'idb')
const leaflet = packages('leaflet', 'react-leaflet', '@react-leaflet/core')
const database = `${packages('@prisma/[^/]+', 'prisma', '@libsql/[^/]+', 'libsql')}|(?:^|/)generated/prisma(?:/|$)`
const app = '^@/app(?:/|$)|(?:^|/)\\.\\./app(?:/|$)'
const alias = '^@/'

/** A restriction of imports; the message says where such an import belongs. */
const restricted = (...patterns) => ({
  'no-restricted-imports': ['error', { patterns: patterns.map(([regex, message]) => ({ regex, message })) }],
})

const onlyInMap = [leaflet, 'Leaflet is imported in app/_map only.']
const onlyInServer = [database, 'The database is imported in app/_server only.']
const pure = 'lib/ is pure: same input, same output.'

const WORLD = [
  'Date', 'fetch', 'process', 'setTimeout', 'setInterval', 'setImmediate', 'queueMicrotask', 'requestAnimationFrame',
  'clearTimeout', 'clearInterval', 'console', 'crypto', 'performance', 'window', 'document', 'navigator', 'location',
  'localStorage', 'sessionStorage', 'indexedDB', 'XMLHttpRequest', 'WebSocket', 'Worker', 'postMessage', 'globalThis',
  'global', 'require', 'Buffer', '__dirname', '__filename',
]

const config = [
  { ignores: ['.next*/**', 'generated/**', 'node_modules/**', 'data/**', 'test-results*/**', 'playwright-report/**', 'coverage/**', 'next-env.d.ts'] },
  ...next,
  ...nextTypescript,
  {
    plugins: { millrace },
    // A rule is mended or taken out, never switched off in a line.
    linterOptions: { noInlineConfig: true, reportUnusedDisableDirectives: 'error' },
    rules: {
      semi: ['error', 'never'],
      quotes: ['error', 'single', { avoidEscape: true, allowTemplateLiterals: true }],
      eqeqeq: 'error',
      'prefer-const': 'error',
      'no-var': 'error',
      'no-eval': 'error',
      'no-new-func': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_', ignoreRestSiblings: true }],
      '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'separate-type-imports', disallowTypeAnnotations: false }],
    },
  },
  {
    files: ['app/**/*.{ts,tsx}', 'proxy.ts'],
    rules: restricted(onlyInMap, onlyInServer),
  },
  {
    files: ['app/_map/**/*.{ts,tsx}'],
    rules: restricted(onlyInServer),
  },
  {
    files: ['app/_server/**/*.ts'],
    rules: restricted(onlyInMap),
  },
  {
    files: ['lib/**/*.ts'],
    rules: {
      ...restricted(
        [nodeModules, pure], [frameworks, pure], [leaflet, pure], [database, pure], [app, 'lib/ never imports app/.'],
        [alias, 'Inside lib/ imports are relative.'],
      ),
      'no-restricted-globals': ['error', ...WORLD.map((name) => ({ name, message: pure }))],
      'no-restricted-properties': ['error', { object: 'Math', property: 'random', message: 'Chance is addressed: lib/random.ts.' }],
      'no-restricted-syntax': ['error', { selector: 'ImportExpression', message: pure }],
    },
  },
  {
    // units.ts turns units of any kind into ours, so its arguments are named for the foreign ones.
    files: ['lib/**/*.ts'],
    ignores: ['lib/units.ts'],
    rules: { 'millrace/unit-suffix': 'error' },
  },
]

export default config
