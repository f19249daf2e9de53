/**
 * Puts a text on the clipboard. Where the page may not (it does not come over HTTPS), the text is selected for the reader
 * to copy.
 *
 * @param from the element that shows the text
 * @returns whether it is on the clipboard
 */
export async function copyText(text: string, from: HTMLElement | null): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text)
    return true
  } catch {
    const selection = window.getSelection()
    if (from && selection) {
      selection.selectAllChildren(from)
      from.focus()
    }
    return false
  }
}
