import { wrap } from 'comlink'
import type { Point } from '@/lib/geo'
import type { Bundle } from '@/lib/plan'
import type { SupplyChart, SupplyResult, Working } from '@/lib/supply'
import { guardOf } from './guard-worker'
import { latestWins } from './latest-wins'
import { onFirstCall } from './on-first-call'
import type { DragAnswer, PlanAnswer } from './planner-engine'
import type { PlannerService } from './planner-service'
import type { WholeService } from './whole.worker'

/** The planner's worker as the page sees it. One for a window; whichever plan is begun last is the one it speaks of. */
export class Planner {
  readonly #port: PlannerService
  readonly #evaluate: (bundle: Bundle) => Promise<SupplyResult | undefined>
  readonly #drag: (args: { placeId: string; point: Point }) => Promise<DragAnswer | undefined>
  #newest = 0

  constructor(port: PlannerService, whole: WholeService) {
    this.#port = port
    this.#evaluate = latestWins((bundle) => whole.evaluate(bundle))
    this.#drag = latestWins(({ placeId, point }) => port.drag(placeId, point))
  }

  /**
   * Answers a plan: first without the limiting link, then whole.
   *
   * @param answered called up to twice; never again once a newer plan has been asked about
   */
  async answer(bundle: Bundle, answered: (answer: PlanAnswer) => void): Promise<void> {
    const own = (this.#newest += 1)
    const quick = await this.#port.begin(bundle)
    if (!quick || own !== this.#newest) return
    answered(quick)
    const result = await this.#evaluate({ ...bundle, legs: [...quick.legs] })
    if (result && own === this.#newest) answered({ ...quick, result, isQuick: false })
  }

  /** The answer with a place moved; undefined when a later move has overtaken it. Asked at every frame it answers as often as it can. */
  drag = (placeId: string, point: Point): Promise<DragAnswer | undefined> => this.#drag({ placeId, point })

  /** A place may be dragged soon: when its symbol is taken hold of or gets the focus. */
  warm = (placeId: string): void => {
    if (this.#newest > 0) void this.#port.warm(placeId).catch(() => undefined)
  }

  explain = (figure: string): Promise<Working | undefined> => this.#port.explain(figure)

  chart = (demand?: 'planned' | number): Promise<SupplyChart | undefined> => this.#port.chart(demand)
}

/** Two workers: one answers at once and holds the roads, the other looks for the limiting link, so that no drag waits for it. */
function startPlanner(): Planner {
  const planner = new Worker(new URL('./planner.worker.ts', import.meta.url))
  const whole = new Worker(new URL('./whole.worker.ts', import.meta.url))
  const [port, wholePort] = [wrap<PlannerService>(planner), wrap<WholeService>(whole)]
  const [guard, guardWhole] = [guardOf(planner), guardOf(whole)]
  return new Planner(
    {
      begin: (bundle) => guard(port.begin(bundle)),
      drag: (placeId, point) => guard(port.drag(placeId, point)),
      warm: (placeId) => guard(port.warm(placeId)),
      explain: (figure) => guard(port.explain(figure)),
      chart: (demand) => guard(port.chart(demand)),
    },
    { evaluate: (bundle) => guardWhole(wholePort.evaluate(bundle)) },
  )
}

/** The planner of this window; its workers start with the first call. Only in a browser. */
export const getPlanner = onFirstCall(startPlanner)
