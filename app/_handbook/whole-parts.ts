/**
 * Parts as whole numbers that add up to a whole: a reader who adds what is written finds what is written. Each is rounded down
 * and what is then missing goes to those that lost most.
 *
 * @param parts whose sum is less than 1 from the whole
 * @param whole a whole number
 */
export function wholeParts(parts: readonly number[], whole: number): number[] {
  const shown = parts.map((part) => Math.floor(part))
  const missing = whole - shown.reduce((sum, part) => sum + part, 0)
  const lostMost = parts.map((part, index) => ({ index, lost: part - Math.floor(part) })).sort((a, b) => b.lost - a.lost || a.index - b.index)
  for (const { index } of lostMost.slice(0, Math.max(0, missing))) shown[index]! += 1
  return shown
}
