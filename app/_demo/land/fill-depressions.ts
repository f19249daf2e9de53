import type { Grid } from './grid'

/** Raises every hollow to its outlet, a hair higher inward, so that water leaves each cell (priority flood from the edges). */
export function fillDepressions({ columns, rows }: Grid, ground: Float64Array): void {
  const heap: number[] = []
  const seen = new Uint8Array(columns * rows)
  const above = (a: number, b: number): boolean => ground[a]! < ground[b]! || (ground[a] === ground[b] && a < b)
  const push = (k: number): void => {
    seen[k] = 1
    let at = heap.push(k) - 1
    while (at > 0) {
      const parent = (at - 1) >> 1
      if (!above(heap[at]!, heap[parent]!)) break
      ;[heap[at], heap[parent]] = [heap[parent]!, heap[at]!]
      at = parent
    }
  }
  const pop = (): number => {
    const top = heap[0]!
    const last = heap.pop()!
    if (heap.length > 0) {
      heap[0] = last
      for (let at = 0; ; ) {
        const left = at * 2 + 1
        if (left >= heap.length) break
        const child = left + 1 < heap.length && above(heap[left + 1]!, heap[left]!) ? left + 1 : left
        if (!above(heap[child]!, heap[at]!)) break
        ;[heap[at], heap[child]] = [heap[child]!, heap[at]!]
        at = child
      }
    }
    return top
  }
  for (let k = 0; k < columns * rows; k++) {
    const [i, j] = [k % columns, Math.floor(k / columns)]
    if (i === 0 || j === 0 || i === columns - 1 || j === rows - 1) push(k)
  }
  while (heap.length > 0) {
    const k = pop()
    const [i, j] = [k % columns, Math.floor(k / columns)]
    for (let dj = -1; dj <= 1; dj++)
      for (let di = -1; di <= 1; di++) {
        const [x, y] = [i + di, j + dj]
        if (x < 0 || y < 0 || x >= columns || y >= rows) continue
        const other = y * columns + x
        if (seen[other] === 1) continue
        if (ground[other]! <= ground[k]!) ground[other] = ground[k]! + 1e-3
        push(other)
      }
  }
}
