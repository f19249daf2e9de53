import { inRoot } from './places.mjs'
import { runNode } from './run.mjs'

/** Arguments and environment that let Node run our TypeScript from any folder. */
export const typescriptArgs = () => ['--import', import.meta.resolve('tsx')]
export const typescriptEnv = () => ({ TSX_TSCONFIG_PATH: inRoot('tsconfig.json') })

/** Runs a TypeScript file of ours with this same Node. */
export const runTypeScript = (args, options = {}) =>
  runNode([...typescriptArgs(), ...args], { ...options, env: { ...typescriptEnv(), ...options.env } })
