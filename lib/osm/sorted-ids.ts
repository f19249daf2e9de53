import { MISSING_NODE } from './osm-extract'

/**
 * Ids in ascending order without duplicates, and where in the file each stood. Of equal
 * ids the last one stands: a later element of a file corrects an earlier one.
 */
export function sortedOnce(fileIds: Float64Array): { ids: Float64Array; order: Uint32Array; fileIds: Float64Array; duplicateCount: number } {
  const count = fileIds.length
  const order = new Uint32Array(count)
  let isSorted = true
  for (let i = 0; i < count; i++) {
    order[i] = i
    if (i > 0 && (fileIds[i] ?? 0) <= (fileIds[i - 1] ?? 0)) isSorted = false
  }
  if (isSorted) return { ids: fileIds, order, fileIds, duplicateCount: 0 }
  order.sort((a, b) => (fileIds[a] ?? 0) - (fileIds[b] ?? 0) || a - b)
  let kept = 0
  for (let i = 0; i < count; i++) {
    const at = order[i] ?? 0
    if (i + 1 < count && fileIds[at] === fileIds[order[i + 1] ?? 0]) continue
    order[kept++] = at
  }
  const once = order.slice(0, kept)
  return { ids: Float64Array.from(once, (at) => fileIds[at] ?? 0), order: once, fileIds, duplicateCount: count - kept }
}

/** Index of an id in ascending ids, or MISSING_NODE. */
export function nodeIndexFromId(ids: Float64Array, id: number): number {
  let low = 0
  let high = ids.length - 1
  while (low <= high) {
    const middle = (low + high) >>> 1
    const found = ids[middle] ?? 0
    if (found === id) return middle
    if (found < id) low = middle + 1
    else high = middle - 1
  }
  return MISSING_NODE
}
