import type { Metadata } from 'next'
import { SeatScreen } from '@/app/_seat/seat-screen'
import { say } from '@/app/_text'
import '@/app/_text/areas/exercise'

export const metadata: Metadata = { title: say('exercise.seat.title') }

/** A seat of an exercise; it lives by what the station tells it, so for offline use kept: never. */
export default function SeatPage() {
  return <SeatScreen />
}
