import { PlanList } from '@/app/_plan/plan-list'

export default async function PlansPage({ params }: { params: Promise<{ districtId: string }> }) {
  const { districtId } = await params
  return <PlanList districtId={districtId} />
}
