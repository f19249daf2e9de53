import type { Metadata } from 'next'
import { ExerciseList } from '@/app/_exercise/exercise-list'
import { say } from '@/app/_text'
import '@/app/_text/areas/exercise'

export const metadata: Metadata = { title: say('exercise.title') }

export default async function ExercisesPage({ params }: { params: Promise<{ districtId: string }> }) {
  const { districtId } = await params
  return <ExerciseList districtId={districtId} />
}
