import type { Metadata } from 'next'
import { BackUpCardScreen } from '@/app/_draft/card/back-up-card-screen'
import { say } from '@/app/_text'

export const metadata: Metadata = { title: say('draft.card.title') }

type Props = {
  params: Promise<{ districtId: string; draftSiteId: string }>
  searchParams: Promise<{ pumper?: string | string[]; season?: string | string[] }>
}

const one = (value: string | string[] | undefined): string | undefined => (typeof value === 'string' ? value : undefined)

export default async function CardPage({ params, searchParams }: Props) {
  const [{ districtId, draftSiteId }, { pumper, season }] = [await params, await searchParams]
  return <BackUpCardScreen districtId={districtId} draftSiteId={draftSiteId} pumperId={one(pumper)} season={one(season)} />
}
