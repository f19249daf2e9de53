/** A worker that cannot start answers nothing: every call is then refused rather than left waiting. */
export function guardOf(worker: Worker): <T>(call: PromiseLike<T>) => Promise<T> {
  const failed = new Promise<never>((_, refuse) => {
    worker.addEventListener('error', ({ message }) => refuse(new Error(message || 'a worker did not start')), { once: true })
  })
  failed.catch(() => undefined)
  return (call) => Promise.race([call, failed])
}
