import type { PartName } from '../_links/part-href'

/** By this the card of a part is gone to. */
export const partId = (part: PartName): string => `part-${part}`

/** What is in a card may come a moment after it has opened; so many frames are waited for it. */
const MOST_FRAMES = 120

/**
 * The keyboard goes to the card of a part, once it is open.
 *
 * @param at what in the card; its own button unless another is named
 */
export function focusPart(part: PartName, at = 'button', frames = MOST_FRAMES): void {
  requestAnimationFrame(() => {
    const found = document.getElementById(partId(part))?.querySelector<HTMLElement>(at)
    if (found) found.focus()
    else if (frames > 0) focusPart(part, at, frames - 1)
  })
}
