import type { Metadata } from 'next'
import { DistrictDrill } from '@/app/drill/district-drill'
import { say } from '@/app/_text'

export const metadata: Metadata = { title: say('drill.title') }

type Props = {
  params: Promise<{ districtId: string }>
  searchParams: Promise<{ pumper?: string | string[]; site?: string | string[] }>
}

const one = (value: string | string[] | undefined): string | undefined => (typeof value === 'string' ? value : undefined)

export default async function DistrictDrillPage({ params, searchParams }: Props) {
  const [{ districtId }, { pumper, site }] = [await params, await searchParams]
  return <DistrictDrill districtId={districtId} pumperId={one(pumper)} draftSiteId={one(site)} />
}
