import type { Metadata } from 'next'
import { ReviewScreen } from '@/app/_review/review-screen'
import { say } from '@/app/_text'
import '@/app/_text/areas/review'

export const metadata: Metadata = { title: say('review.page') }

export default async function ReviewPage({ params }: { params: Promise<{ districtId: string; logId: string }> }) {
  const { districtId, logId } = await params
  return <ReviewScreen districtId={districtId} logId={logId} />
}
