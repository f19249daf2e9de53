import { Planner } from '@/app/_plan/planner'

type Props = { params: Promise<{ districtId: string; planId: string }>; searchParams: Promise<{ part?: string | string[] }> }

export default async function PlanPage({ params, searchParams }: Props) {
  const [{ districtId, planId }, { part }] = [await params, await searchParams]
  return <Planner districtId={districtId} planId={planId} partName={typeof part === 'string' ? part : undefined} />
}
