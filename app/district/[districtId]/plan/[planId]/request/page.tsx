import { RequestScreen } from '@/app/_advice/request-screen'

export default async function RequestPage({ params }: { params: Promise<{ districtId: string; planId: string }> }) {
  const { districtId, planId } = await params
  return <RequestScreen districtId={districtId} planId={planId} />
}
