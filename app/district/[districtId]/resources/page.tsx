import { Resources } from '@/app/_resources/resources'

export default async function ResourcesPage({ params }: { params: Promise<{ districtId: string }> }) {
  const { districtId } = await params
  return <Resources districtId={districtId} />
}
