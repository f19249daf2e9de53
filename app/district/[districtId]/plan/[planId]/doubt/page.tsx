import { DoubtScreen } from '@/app/_doubt/doubt-screen'

export default async function DoubtPage({ params }: { params: Promise<{ districtId: string; planId: string }> }) {
  const { districtId, planId } = await params
  return <DoubtScreen districtId={districtId} planId={planId} />
}
