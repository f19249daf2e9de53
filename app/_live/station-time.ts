/**
 * The station's time on a device whose own clock may be wrong.
 *
 * Each beat says what the station's clock shows; it comes a little late, never early, so of several the one that puts
 * the station furthest ahead is the nearest. What was heard long ago counts no more: clocks drift, and are set.
 */
export class StationTime {
  #heard: { at_ms: number; ahead_ms: number }[] = []

  /** @param own a clock of the device that only runs forward, milliseconds */
  constructor(readonly own: () => number, readonly kept_ms = 60_000) {}

  hear(station_ms: number): void {
    const at_ms = this.own()
    this.#heard = [...this.#heard.filter((one) => one.at_ms > at_ms - this.kept_ms), { at_ms, ahead_ms: station_ms - at_ms }]
  }

  /** Milliseconds since 1970 by the station; undefined while nothing was heard. */
  now(): number | undefined {
    return this.#heard.length === 0 ? undefined : this.own() + Math.max(...this.#heard.map(({ ahead_ms }) => ahead_ms))
  }
}

const station = new StationTime(() => performance.now())

/** A beat came from the station. */
export const hearStation = (now_ms: number): void => { station.hear(now_ms) }

/** The station's time; this device's own until the station was heard. */
export const stationNow = (): number => station.now() ?? Date.now()
