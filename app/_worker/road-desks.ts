import { issue, type Issue } from '@/lib/issue'
import type { District, RoadNote } from '@/lib/plan'
import { decodeRoadGraph, type RoadGraph } from '@/lib/roads'
import { RecentMap } from './recent-map'
import { RoadDesk } from './road-desk'

export type FindBlob = (hash: string) => Promise<Uint8Array | undefined>

const GRAPHS_KEPT = 2

/** Roads of districts: each graph is fetched and read once, each set of road notes has a desk of its own. */
export class RoadDesks {
  readonly #findBlob: FindBlob
  readonly #graphs = new RecentMap<RoadGraph | Issue>(GRAPHS_KEPT)
  readonly #desks: RecentMap<RoadDesk>

  /** @param kept how many sets of road notes are kept ready */
  constructor(findBlob: FindBlob, kept = 1) {
    this.#findBlob = findBlob
    this.#desks = new RecentMap(kept)
  }

  /** The roads of the district, weighed under its notes; without them the issue why, unless it has none. */
  async deskFor({ roads, roadNotes }: District): Promise<{ desk?: RoadDesk; issues: readonly Issue[] }> {
    if (!roads) return { issues: [] }
    const graph = await this.#graph(roads.hash)
    return 'code' in graph ? { issues: [graph] } : { desk: this.deskOn(graph, roads.hash, roadNotes), issues: [] }
  }

  /** The desk of a graph under other notes. */
  deskOn(graph: RoadGraph, hash: string, notes: readonly RoadNote[]): RoadDesk {
    return this.#desks.getOrMake(`${hash} ${JSON.stringify(notes)}`, () => new RoadDesk(graph, notes))
  }

  async #graph(hash: string): Promise<RoadGraph | Issue> {
    const known = this.#graphs.find(hash)
    if (known) return known
    const bytes = await this.#findBlob(hash).catch((error: unknown) => issue('roads-unreachable', 'warn', [], { reason: String(error) }))
    if (bytes === undefined) return issue('roads-missing', 'warn', [], { hash: hash.slice(0, 12) })
    if (!(bytes instanceof Uint8Array)) return bytes
    const decoded = decodeRoadGraph(bytes)
    const graph = 'code' in decoded ? ({ ...decoded, severity: 'warn' } as const) : decoded
    this.#graphs.put(hash, graph)
    return graph
  }
}
