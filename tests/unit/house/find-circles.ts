/**
 * Files that reach themselves by their imports, those of one circle together, in order of name.
 *
 * @param imports of each file, the files it imports
 * @source R. E. Tarjan, Depth-first search and linear graph algorithms, 1972
 */
export function findCircles(imports: ReadonlyMap<string, readonly string[]>): string[][] {
  const order = new Map<string, number>()
  const lowest = new Map<string, number>()
  const open: string[] = []
  const circles: string[][] = []
  const visit = (file: string): void => {
    order.set(file, order.size)
    lowest.set(file, order.get(file)!)
    open.push(file)
    for (const next of imports.get(file) ?? []) {
      if (!order.has(next)) visit(next)
      if (open.includes(next)) lowest.set(file, Math.min(lowest.get(file)!, lowest.get(next)!))
    }
    if (lowest.get(file) !== order.get(file)) return
    const circle = open.splice(open.indexOf(file)).sort()
    if (circle.length > 1 || imports.get(file)?.includes(file)) circles.push(circle)
  }
  for (const file of imports.keys()) if (!order.has(file)) visit(file)
  return circles.sort()
}
