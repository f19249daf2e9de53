import { Planner } from '@/app/_plan/planner'

export default async function PlanPage({ params }: { params: Promise<{ districtId: string; planId: string }> }) {
  const { districtId, planId } = await params
  return <Planner districtId={districtId} planId={planId} />
}
