/** Longer names are written over several lines: on a small map a long line lies over everything round it. */
const LONGEST = 22

/**
 * A name as it is written under its symbol: over as few lines as there must be, about alike in length, broken between
 * words only.
 */
export function nameLines(name: string): string[] {
  const words = name.split(' ')
  const aim = name.length / Math.ceil(name.length / LONGEST)
  const lines: string[] = []
  for (const word of words) {
    const last = lines.at(-1)
    // A word goes where the line then ends nearer to the aim.
    if (last !== undefined && last.length + 1 + word.length / 2 <= aim) lines[lines.length - 1] = `${last} ${word}`
    else lines.push(word)
  }
  return lines
}
