import { CompareScreen } from '@/app/_compare/compare-screen'

export default async function ComparePage({ params }: { params: Promise<{ districtId: string }> }) {
  const { districtId } = await params
  return <CompareScreen districtId={districtId} />
}
