import type { Metadata } from 'next'
import { LogList } from '@/app/_log/log-list'
import { say } from '@/app/_text'
import '@/app/_text/areas/log'

export const metadata: Metadata = { title: say('log.title') }

export default async function LogsPage({ params }: { params: Promise<{ districtId: string }> }) {
  const { districtId } = await params
  return <LogList districtId={districtId} />
}
