import type { RoadTables } from './road-graph'

export type TurnTables = Pick<RoadTables, 'turnFrom' | 'turnArc' | 'turnTo' | 'ghostArc'>

/** Arcs in a row that may not be driven in a row; with `isOnly`, the last is the only way on from the ones before. */
export type BannedRun = { readonly arcs: readonly number[]; readonly isOnly: boolean }

const BANNED = -1

/**
 * Makes the state tables that ban runs of arcs. A run over one node is one entry: from
 * its first arc into its last, banned. A longer run needs memory of how it was entered,
 * so its middle arcs get ghosts: states of their own with the same road beneath.
 *
 * @source the failure links of A. V. Aho and M. J. Corasick, 1975: a ghost that leaves its run falls back
 *   to the longest other run it is also on, so overlapping restrictions all hold
 */
export class TurnAutomaton {
  private readonly arcCount: number
  private readonly next = new Map<number, Map<number, number>>()
  private readonly ghostArc: number[] = []
  private readonly ghostParent: number[] = []
  private readonly outOf = new Map<number, number[]>()

  constructor(
    private readonly edges: Pick<RoadTables, 'edgeFrom' | 'edgeTo'>,
    runs: readonly BannedRun[],
  ) {
    this.arcCount = edges.edgeFrom.length * 2
    if (runs.some(({ isOnly }) => isOnly)) this.listOutArcs(runs)
    const allowed = new Map<number, Set<number>>()
    for (const run of runs) this.add(run, allowed)
    for (const [state, arcs] of allowed) {
      for (const arc of this.outOf.get(this.head(this.arcOf(state))) ?? []) if (!arcs.has(arc)) this.set(state, arc, BANNED)
    }
    this.inherit()
  }

  tables(): TurnTables {
    const rows = [...this.next].flatMap(([state, arcs]) => [...arcs].map(([arc, to]) => [state, arc, to] as const))
    rows.sort((a, b) => a[0] - b[0] || a[1] - b[1])
    return {
      turnFrom: Uint32Array.from(rows, (row) => row[0]),
      turnArc: Uint32Array.from(rows, (row) => row[1]),
      turnTo: Int32Array.from(rows, (row) => row[2]),
      ghostArc: Uint32Array.from(this.ghostArc),
    }
  }

  private arcOf(state: number): number {
    return state < this.arcCount ? state : (this.ghostArc[state - this.arcCount] ?? 0)
  }

  private head(arc: number): number {
    return (arc & 1 ? this.edges.edgeFrom : this.edges.edgeTo)[arc >>> 1] ?? -1
  }

  private set(state: number, arc: number, to: number): void {
    const arcs = this.next.get(state) ?? new Map<number, number>()
    this.next.set(state, arcs)
    // A ban stands against a ghost of the same turn: what is forbidden leads nowhere.
    if (arcs.get(arc) !== BANNED) arcs.set(arc, to)
  }

  private add({ arcs, isOnly }: BannedRun, allowed: Map<number, Set<number>>): void {
    const last = arcs[arcs.length - 1]
    const first = arcs[0]
    if (first === undefined || last === undefined) return
    let state: number = first
    for (const arc of arcs.slice(1, -1)) {
      const known = this.next.get(state)?.get(arc)
      if (known === BANNED) return
      if (known === undefined) {
        const ghost = this.arcCount + this.ghostArc.length
        this.ghostArc.push(arc)
        this.ghostParent.push(state)
        this.set(state, arc, ghost)
        state = ghost
      } else state = known
    }
    if (!isOnly) this.set(state, last, BANNED)
    else allowed.set(state, new Set([...(allowed.get(state) ?? []), last]))
  }

  /** Each ghost takes over the entries of the state it falls back to. Parents come before children. */
  private inherit(): void {
    const fallback = new Map<number, number>()
    const depth = new Map<number, number>()
    const ghosts = this.ghostArc.map((_, ghost) => this.arcCount + ghost)
    for (const ghost of ghosts) depth.set(ghost, (depth.get(this.ghostParent[ghost - this.arcCount] ?? 0) ?? 0) + 1)
    ghosts.sort((a, b) => (depth.get(a) ?? 0) - (depth.get(b) ?? 0))
    for (const ghost of ghosts) {
      const arc = this.arcOf(ghost)
      const parentFallback = fallback.get(this.ghostParent[ghost - this.arcCount] ?? 0)
      const onward = parentFallback === undefined ? undefined : this.next.get(parentFallback)?.get(arc)
      const back = onward === undefined || onward === BANNED ? arc : onward
      fallback.set(ghost, back)
      for (const [next, to] of this.next.get(back) ?? []) {
        if (to === BANNED || this.next.get(ghost)?.get(next) === undefined) this.set(ghost, next, to)
      }
    }
  }

  private listOutArcs(runs: readonly BannedRun[]): void {
    const wanted = new Set(runs.flatMap(({ arcs }) => arcs.map((arc) => this.head(arc))))
    for (let arc = 0; arc < this.arcCount; arc++) {
      const tail = this.head(arc ^ 1)
      if (wanted.has(tail)) this.outOf.set(tail, [...(this.outOf.get(tail) ?? []), arc])
    }
  }
}
