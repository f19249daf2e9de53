import type { Metadata } from 'next'
import { ExerciseScreen } from '@/app/_exercise/exercise-screen'
import { say } from '@/app/_text'

export const metadata: Metadata = { title: say('shell.exercise') }

export default async function ExercisePage({ params }: { params: Promise<{ districtId: string; exerciseId: string }> }) {
  const { districtId, exerciseId } = await params
  return <ExerciseScreen districtId={districtId} exerciseId={exerciseId} />
}
