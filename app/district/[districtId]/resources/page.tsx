import { Resources } from '@/app/_resources/resources'

type Props = { params: Promise<{ districtId: string }>; searchParams: Promise<{ item?: string | string[] }> }

export default async function ResourcesPage({ params, searchParams }: Props) {
  const [{ districtId }, { item }] = [await params, await searchParams]
  return <Resources districtId={districtId} itemId={typeof item === 'string' ? item : undefined} />
}
