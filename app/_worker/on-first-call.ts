/** What is made when it is first asked for, and is the same from then on. */
export function onFirstCall<T>(make: () => T): () => T {
  let made: { readonly it: T } | undefined
  return () => (made ??= { it: make() }).it
}
