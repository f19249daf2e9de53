import type { Metadata } from 'next'
import { LogScreen } from '@/app/_log/log-screen'
import { say } from '@/app/_text'

export const metadata: Metadata = { title: say('shell.log') }

export default async function LogPage({ params }: { params: Promise<{ districtId: string; logId: string }> }) {
  const { districtId, logId } = await params
  return <LogScreen districtId={districtId} logId={logId} />
}
