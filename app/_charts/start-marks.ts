import type { ChartLine } from './chart-lines'

/** The numbers of lines that begin close together: one word, so that none overprints another. */
export type StartMark = { readonly ids: readonly string[]; readonly words: string; readonly right: number; readonly share: number }

/** Of the 12 px type of the chart: a character, at the most. */
const CHARACTER = 7
const APART = 3

/**
 * Where the number of each line stands: left of where it begins, together with those it would overprint.
 *
 * @param x    place of a time, in px
 * @param left where the plot begins, in px; no number stands left of it
 */
export function startMarks(lines: readonly ChartLine[], end_s: number, x: (time_s: number) => number, left: number): StartMark[] {
  const marks: StartMark[] = []
  const begun = lines.flatMap(({ id, letter, points: [start] }) => (start && start.time_s < end_s ? [{ id, letter, start }] : []))
  for (const { id, letter, start } of begun.sort((a, b) => a.start.time_s - b.start.time_s)) {
    let mark = placed([id], letter, x(start.time_s) - APART, start.share, left)
    for (let before = findOverprinted(marks, mark); before; before = findOverprinted(marks, mark)) {
      marks.splice(marks.indexOf(before), 1)
      mark = placed([...before.ids, ...mark.ids], `${before.words}, ${mark.words}`, mark.right, mark.share, left)
    }
    marks.push(mark)
  }
  return marks
}

/** Room that words take up on a chart, in px. */
export const widthOf = (words: string): number => words.length * CHARACTER

const placed = (ids: readonly string[], words: string, right: number, share: number, left: number): StartMark => ({ ids, words, share, right: Math.max(right, left + APART + widthOf(words)) })

const findOverprinted = (marks: readonly StartMark[], { words, right, share }: StartMark): StartMark | undefined =>
  marks.findLast((one) => Math.abs(one.share - share) < 0.1 && one.right + APART > right - widthOf(words) && right + APART > one.right - widthOf(one.words))
