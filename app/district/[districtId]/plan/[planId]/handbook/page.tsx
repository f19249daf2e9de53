import { HandbookScreen } from '@/app/_handbook/handbook-screen'

export default async function HandbookPage({ params }: { params: Promise<{ districtId: string; planId: string }> }) {
  const { districtId, planId } = await params
  return <HandbookScreen districtId={districtId} planId={planId} />
}
