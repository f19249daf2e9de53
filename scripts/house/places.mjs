/** Where things are: the one place that knows the folders and the environment variables that move them. */
import path from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'

export const root = fileURLToPath(new URL('../../', import.meta.url)).replace(/[\\/]$/, '')

export const inRoot = (...parts) => path.join(root, ...parts)

/** Folder of the database: MILLRACE_DATA, or `data` in the project. */
export const dataFolder = () => path.resolve(root, process.env.MILLRACE_DATA || 'data')

export const databaseFile = () => path.join(dataFolder(), 'millrace.db')

export const urlOfFile = (file) => pathToFileURL(file).href

export const databaseUrl = () => urlOfFile(databaseFile())

/** Folder of the production build, inside the project: MILLRACE_BUILD, or `.next`. */
export const buildFolder = () => process.env.MILLRACE_BUILD || '.next'
