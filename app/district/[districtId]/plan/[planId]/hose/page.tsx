import { HoseScreen } from '@/app/_hose/hose-screen'

export default async function HosePage({ params }: { params: Promise<{ districtId: string; planId: string }> }) {
  const { districtId, planId } = await params
  return <HoseScreen districtId={districtId} planId={planId} />
}
