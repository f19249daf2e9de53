/** Words for the person at the terminal. */

/** A failure that one sentence explains; no stack is shown for it. */
export class PlainError extends Error {
  /**
   * @param sentence what is wrong and what to do
   * @param details  output of the tool that failed, shown above the sentence
   */
  constructor(sentence, details = '') {
    super(sentence)
    this.details = details
  }
}

export const say = (line) => process.stdout.write(`${line}\n`)

/** What is going on, for a person who waits; kept apart from results, which another program may read. */
export const sayProgress = (line) => process.stderr.write(`${line}\n`)

/** Runs `main` and ends the process: an error becomes one sentence. */
export async function runMain(main) {
  try {
    const code = await main()
    if (typeof code === 'number') process.exitCode = code
  } catch (error) {
    if (error instanceof PlainError) {
      if (error.details) process.stderr.write(`${error.details.trimEnd()}\n\n`)
      process.stderr.write(`${error.message}\n`)
    } else {
      process.stderr.write(`Millrace stopped on an unexpected error: ${error?.stack ?? error}\n`)
    }
    process.exitCode = 1
  }
}
