import { ExchangeScreen } from '@/app/_exchange/exchange-screen'

export default async function ExchangePage({ params }: { params: Promise<{ districtId: string }> }) {
  const { districtId } = await params
  return <ExchangeScreen districtId={districtId} />
}
