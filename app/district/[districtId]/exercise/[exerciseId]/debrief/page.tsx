import type { Metadata } from 'next'
import { DebriefScreen } from '@/app/_exercise/debrief-screen'
import { say } from '@/app/_text'
import '@/app/_text/areas/exercise'

export const metadata: Metadata = { title: say('exercise.debrief') }

export default async function DebriefPage({ params }: { params: Promise<{ districtId: string; exerciseId: string }> }) {
  const { districtId, exerciseId } = await params
  return <DebriefScreen districtId={districtId} exerciseId={exerciseId} />
}
