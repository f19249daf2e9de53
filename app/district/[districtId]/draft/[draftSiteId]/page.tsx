import type { Metadata } from 'next'
import { DraftScreen } from '@/app/_draft/draft-screen'
import { say } from '@/app/_text'
import '@/app/_text/areas/draft'

export const metadata: Metadata = { title: say('draft.title') }

export default async function DraftPage({ params }: { params: Promise<{ districtId: string; draftSiteId: string }> }) {
  const { districtId, draftSiteId } = await params
  return <DraftScreen districtId={districtId} draftSiteId={draftSiteId} />
}
