/** What a spreadsheet would take for a formula, and what we put before it. */
const FORMULA = /^'*[=+\-@\t\r]/

/**
 * A text as a cell that no spreadsheet takes for a formula: an apostrophe before it. What begins with one already gets
 * another, so that it comes back as it was.
 */
export const guarded = (text: string): string => (FORMULA.test(text) ? `'${text}` : text)

/** A cell as it was before the guard. */
export const unguarded = (cell: string): string => (cell.startsWith("'") && FORMULA.test(cell) ? cell.slice(1) : cell)
