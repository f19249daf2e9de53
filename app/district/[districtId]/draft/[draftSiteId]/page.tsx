import type { Metadata } from 'next'
import { DraftScreen } from '@/app/_draft/draft-screen'
import { say } from '@/app/_text'

export const metadata: Metadata = { title: say('draft.title') }

type Props = {
  params: Promise<{ districtId: string; draftSiteId: string }>
  searchParams: Promise<{ pumper?: string | string[]; plan?: string | string[] }>
}

const one = (value: string | string[] | undefined): string | undefined => (typeof value === 'string' ? value : undefined)

export default async function DraftPage({ params, searchParams }: Props) {
  const [{ districtId, draftSiteId }, { pumper, plan }] = [await params, await searchParams]
  return <DraftScreen districtId={districtId} draftSiteId={draftSiteId} pumperId={one(pumper)} planId={one(plan)} />
}
