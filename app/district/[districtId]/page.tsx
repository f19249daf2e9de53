import { redirect } from 'next/navigation'
import { screenHref } from '@/app/_links/screens'

/** A district opens at its plans. */
export default async function DistrictPage({ params }: { params: Promise<{ districtId: string }> }) {
  const { districtId } = await params
  redirect(screenHref('plan', districtId))
}
