/** A flow from a moment on, until the next step. */
export type Step = { readonly from_s: number; readonly flow_gpm: number }

/** Steps that hold within a time, the first from its beginning. */
export function stepsWithin(steps: readonly Step[], from_s: number, to_s: number): Step[] {
  const at = steps.findLast((step) => step.from_s <= from_s)
  return [{ from_s, flow_gpm: at?.flow_gpm ?? 0 }, ...steps.filter((step) => step.from_s > from_s && step.from_s < to_s)]
}

/** Steps of stretches that follow one another as one list: of two at one moment the later counts, and what changes nothing is left out. */
export function joinedSteps(lists: readonly (readonly Step[])[]): Step[] {
  const joined: Step[] = []
  for (const step of lists.flat()) {
    const last = joined.at(-1)
    if (last?.from_s === step.from_s) joined[joined.length - 1] = step
    else if (last?.flow_gpm !== step.flow_gpm) joined.push(step)
  }
  return joined
}
