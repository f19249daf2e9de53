import type { PartName } from '../_links/part-href'

/** By this the card of a part is gone to. */
export const partId = (part: PartName): string => `part-${part}`

/**
 * The keyboard goes to the card of a part, once it is open.
 *
 * @param at what in the card; its own button unless another is named
 */
export function focusPart(part: PartName, at = 'button'): void {
  requestAnimationFrame(() => { document.getElementById(partId(part))?.querySelector<HTMLElement>(at)?.focus() })
}
