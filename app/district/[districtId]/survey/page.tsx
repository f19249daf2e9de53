import { Survey } from '@/app/_survey/survey'

type Props = { params: Promise<{ districtId: string }>; searchParams: Promise<{ item?: string | string[] }> }

export default async function SurveyPage({ params, searchParams }: Props) {
  const [{ districtId }, { item }] = [await params, await searchParams]
  return <Survey districtId={districtId} itemId={typeof item === 'string' ? item : undefined} />
}
