import { isTextKey, say } from './say'

/** What a field of a document, or a symbol of a formula, is called on screen. */
export function fieldLabel(field: string): string {
  const key = `field.${field}`
  return isTextKey(key) ? say(key) : field.replace(/_[A-Za-z]+$/, '').replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase()
}
