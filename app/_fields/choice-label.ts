import { isTextKey, say } from '../_text'

/** Words of a choice. */
export function choiceLabel(field: string, value: string): string {
  const key = `choice.${field}.${value}`
  return isTextKey(key) ? say(key) : value
}
