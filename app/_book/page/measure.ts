import type { Weight } from './marks'

/** The typeface the sheets are set in, as far as layout needs it. */
export type Measure = {
  /** How wide a text is set, in points. */
  across(text: string, size: number, weight: Weight): number
  /** The text with what the typeface cannot write replaced. */
  clean(text: string): string
  /** What it could not write so far, each sign once. */
  readonly unwritten: ReadonlySet<string>
}

/** From one base line to the next, of the size. */
export const LEADING = 1.27
/** The base line below the top of a line, of the size. */
export const ASCENT = 0.98

/**
 * Breaks a text into lines that fit: at spaces, and a word that is too long for a line anywhere, so that nothing is ever cut off.
 *
 * @param across in points, above 0
 */
export function wrap(measure: Measure, text: string, across: number, size: number, weight: Weight): string[] {
  const fits = (line: string) => measure.across(line, size, weight) <= across
  const lines: string[] = []
  for (const paragraph of measure.clean(text).split('\n')) {
    let line = ''
    for (const word of paragraph.split(' ').filter((one) => one !== '')) {
      const longer = line === '' ? word : `${line} ${word}`
      if (fits(longer)) {
        line = longer
        continue
      }
      if (line !== '') lines.push(line)
      line = word
      while (line.length > 1 && !fits(line)) {
        let end = line.length - 1
        while (end > 1 && !fits(line.slice(0, end))) end--
        lines.push(line.slice(0, end))
        line = line.slice(end)
      }
    }
    lines.push(line)
  }
  return lines.length > 0 ? lines : ['']
}
