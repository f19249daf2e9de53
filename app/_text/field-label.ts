import { isTextKey, say } from './say'

/** What a field of a document, or a symbol of a formula, is called within a sentence: "lift". */
export function fieldName(field: string): string {
  const key = `field.${field}`
  return isTextKey(key) ? say(key) : field.replace(/_[A-Za-z]+$/, '').replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase()
}

/** The same where it begins a line, as the label of a field does: "Lift". */
export function fieldLabel(field: string): string {
  const name = fieldName(field)
  return name.charAt(0).toUpperCase() + name.slice(1)
}
