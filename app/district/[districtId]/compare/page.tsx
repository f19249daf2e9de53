import { planIdsFrom } from '@/app/_compare/compare-href'
import { CompareScreen } from '@/app/_compare/compare-screen'

type Props = { params: Promise<{ districtId: string }>; searchParams: Promise<{ plans?: string | string[] }> }

export default async function ComparePage({ params, searchParams }: Props) {
  const [{ districtId }, { plans }] = [await params, await searchParams]
  return <CompareScreen districtId={districtId} planIds={planIdsFrom(Array.isArray(plans) ? plans.join(',') : plans)} />
}
