import type { Metadata } from 'next'
import { BookScreen } from '@/app/_book/book-screen'
import { say } from '@/app/_text'
import '@/app/_text/areas/book'

export const metadata: Metadata = { title: say('book.title') }

export default async function BookPage({ params }: { params: Promise<{ districtId: string }> }) {
  const { districtId } = await params
  return <BookScreen districtId={districtId} />
}
