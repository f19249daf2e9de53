/**
 * Calls one at a time; while one is under way only the newest waits, and those it overtook
 * are answered with undefined.
 */
export function latestWins<A, R>(call: (args: A) => Promise<R>): (args: A) => Promise<R | undefined> {
  let isBusy = false
  let waiting: { args: A; settle: (result: Promise<R | undefined> | undefined) => void } | undefined

  const run = async (args: A): Promise<R> => {
    isBusy = true
    try {
      return await call(args)
    } finally {
      isBusy = false
      const next = waiting
      waiting = undefined
      if (next) next.settle(run(next.args))
    }
  }

  return (args) => {
    if (!isBusy) return run(args)
    return new Promise((resolve) => {
      waiting?.settle(undefined)
      waiting = { args, settle: resolve }
    })
  }
}
