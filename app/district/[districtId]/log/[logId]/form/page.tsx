import type { Metadata } from 'next'
import { PaperForm } from '@/app/_log/paper-form'
import { say } from '@/app/_text'
import '@/app/_text/areas/log'

export const metadata: Metadata = { title: say('log.form.title') }

export default async function FormPage({ params }: { params: Promise<{ districtId: string; logId: string }> }) {
  const { districtId, logId } = await params
  return <PaperForm districtId={districtId} logId={logId} />
}
