import { Survey } from '@/app/_survey/survey'

export default async function SurveyPage({ params }: { params: Promise<{ districtId: string }> }) {
  const { districtId } = await params
  return <Survey districtId={districtId} />
}
