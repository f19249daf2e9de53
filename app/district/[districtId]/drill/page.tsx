import type { Metadata } from 'next'
import { DistrictDrill } from '@/app/drill/district-drill'
import { say } from '@/app/_text'
import '@/app/_text/areas/drill'

export const metadata: Metadata = { title: say('drill.title') }

export default async function DistrictDrillPage({ params }: { params: Promise<{ districtId: string }> }) {
  const { districtId } = await params
  return <DistrictDrill districtId={districtId} />
}
