import type { Metadata } from 'next'
import { BackUpCardScreen } from '@/app/_draft/card/back-up-card-screen'
import { say } from '@/app/_text'
import '@/app/_text/areas/draft'

export const metadata: Metadata = { title: say('draft.card.title') }

export default async function CardPage({ params }: { params: Promise<{ districtId: string; draftSiteId: string }> }) {
  const { districtId, draftSiteId } = await params
  return <BackUpCardScreen districtId={districtId} draftSiteId={draftSiteId} />
}
