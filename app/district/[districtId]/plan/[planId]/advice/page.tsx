import { AdviceScreen } from '@/app/_advice/advice-screen'

export default async function AdvicePage({ params }: { params: Promise<{ districtId: string; planId: string }> }) {
  const { districtId, planId } = await params
  return <AdviceScreen districtId={districtId} planId={planId} />
}
