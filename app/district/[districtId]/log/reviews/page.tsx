import type { Metadata } from 'next'
import { AllReviewsScreen } from '@/app/_review/all-reviews-screen'
import { say } from '@/app/_text'
import '@/app/_text/areas/review'

export const metadata: Metadata = { title: say('review.all') }

export default async function ReviewsPage({ params }: { params: Promise<{ districtId: string }> }) {
  const { districtId } = await params
  return <AllReviewsScreen districtId={districtId} />
}
