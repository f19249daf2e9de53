import type { Metadata } from 'next'
import { PaperEntry } from '@/app/_log/paper-entry'
import { say } from '@/app/_text'
import '@/app/_text/areas/log'

export const metadata: Metadata = { title: say('log.paper.title') }

export default async function PaperPage({ params }: { params: Promise<{ districtId: string; logId: string }> }) {
  const { districtId, logId } = await params
  return <PaperEntry districtId={districtId} logId={logId} />
}
