import { flatFields } from './flat-fields'
import { fieldsOf } from './list-fields'
import type { FoundFeature, ItemList } from './place'

/**
 * Columns of our own feature as we write them: a map program that has had the file keeps a part whole, as one text of
 * JSON (`suction` in place of `suction.size_in`). A text that is none stays as it is.
 */
export function ownValues(feature: FoundFeature, list: ItemList): FoundFeature {
  const parts = new Set(fieldsOf(list).flatMap(({ path }) => (path.includes('.') ? [path.slice(0, path.indexOf('.'))] : [])))
  const whole = Object.entries(feature.values).filter(([name, value]) => parts.has(name) && typeof value === 'string' && value.trimStart().startsWith('{'))
  if (whole.length === 0) return feature
  return { ...feature, values: { ...feature.values, ...Object.fromEntries(whole.flatMap(([name, value]) => Object.entries(partFrom(name, String(value))))) } }
}

function partFrom(name: string, text: string): ReturnType<typeof flatFields> {
  try {
    return flatFields({ [name]: JSON.parse(text) as unknown })
  } catch {
    return {}
  }
}
