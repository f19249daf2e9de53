import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

/** Tests that hold a database, a port, a global of the browser or a clock: each file has its modules to itself. */
const alone = ['integration', 'unit/client', 'unit/house', 'unit/live', 'unit/planner', 'unit/seat', 'unit/shell', 'unit/ui', 'unit/worker']
const filesIn = (folder: string): string => `tests/${folder}/**/*.test.{ts,tsx}`

export default defineConfig({
  resolve: { alias: { '@': fileURLToPath(new URL('.', import.meta.url)).replace(/[\\/]$/, '') } },
  test: {
    environment: 'node',
    // The runner leaves a core to itself unless told; on a small machine that is half of all.
    maxWorkers: '100%',
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // A focused test left behind would hide all others.
    allowOnly: false,
    passWithNoTests: false,
    projects: [
      { extends: true, test: { name: 'alone', include: alone.map(filesIn) } },
      // The others hold no state of their own, so that a worker reads the program once for all its files and not for each.
      { extends: true, test: { name: 'together', isolate: false, include: ['tests/**/*.test.{ts,tsx}'], exclude: alone.map(filesIn) } },
    ],
  },
})
