import path from 'node:path'

const place = path.resolve(import.meta.dirname, '../../test-results-data')

/** Folders of the databases that servers under test start from: with the demonstration district, and with nothing. */
export const TEMPLATES = { demo: path.join(place, 'demo'), empty: path.join(place, 'empty') } as const

export type TemplateKind = keyof typeof TEMPLATES

/** Where a worker keeps its own copy. */
export const folderOfWorker = (kind: TemplateKind, index: number): string => path.join(place, `worker-${index}-${kind}`)
