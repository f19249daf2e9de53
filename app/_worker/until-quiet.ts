/** What a person does at the page that must not wait for anything. */
const acts = ['keydown', 'input', 'pointerdown', 'pointermove', 'wheel', 'touchmove'] as const

/**
 * Waits until nobody has typed, pressed or dragged for a while. A pointer that only passes over is no act.
 *
 * @param quiet_ms how long nothing must have happened
 */
export function quietWatch(target: EventTarget, quiet_ms: number): () => Promise<void> {
  let last_ms = -Infinity
  const noted = (event: Event): void => {
    if (event.type === 'pointermove' && (event as PointerEvent).buttons === 0) return
    last_ms = performance.now()
  }
  for (const act of acts) target.addEventListener(act, noted, { capture: true, passive: true })
  return async () => {
    for (;;) {
      const left_ms = last_ms + quiet_ms - performance.now()
      if (!(left_ms > 0)) return
      await new Promise((resolve) => setTimeout(resolve, left_ms))
    }
  }
}
