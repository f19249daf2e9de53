import { isInFrame, type Spot } from '../frame'
import { simplify, type Line } from '../geometry/line'
import type { Stream } from './streams'

export type MappedStream = { stream: Stream; line: Line }

/** Streams as the map draws them: inside the frame, without spots that say nothing; where another flows in, the spot stays. */
export function mappedStreams(streams: readonly Stream[]): MappedStream[] {
  const mouths = new Set(streams.flatMap(({ into, water }) => (into === undefined ? [] : [keyOf(water[water.length - 1]!)])))
  return streams.map((stream) => {
    const kept: Spot[] = []
    let run: Spot[] = []
    for (const here of stream.water.filter(isInFrame)) {
      run.push(here)
      if (!mouths.has(keyOf(here))) continue
      kept.push(...simplify(run, 1).slice(0, -1))
      run = [here]
    }
    return { stream, line: [...kept, ...simplify(run, 1)] }
  })
}

const keyOf = ({ x, y }: Spot): string => `${x},${y}`
