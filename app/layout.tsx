import type { Metadata } from 'next'
import { connection } from 'next/server'
import type { ReactNode } from 'react'

export const metadata: Metadata = { title: 'Millrace' }

export default async function RootLayout({ children }: { children: ReactNode }) {
  // Every page is made for its request: the security policy names a fresh nonce each time.
  await connection()
  return (
    <html lang="en">
      <body>{children}</body>
    </html>
  )
}
