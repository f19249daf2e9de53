import '@fontsource-variable/atkinson-hyperlegible-next/wght.css'
import './_look/tokens.css'
import './_look/base.css'
import type { Metadata, Viewport } from 'next'
import { cookies } from 'next/headers'
import type { ReactNode } from 'react'
import { Providers } from './_frame/providers'
import { findTheme, THEME_COOKIE } from './_look/theme'
import { findUnitSystem, say, UNIT_COOKIE } from './_text'

export const metadata: Metadata = {
  title: { default: say('shell.name'), template: `%s · ${say('shell.name')}` },
  description: say('shell.tagline'),
}

export const viewport: Viewport = {
  width: 'device-width',
  initialScale: 1,
  viewportFit: 'cover',
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: '#fcfaf5' },
    { media: '(prefers-color-scheme: dark)', color: '#1b1711' },
  ],
}

/**
 * Units and light are read from cookies here, so that the first page is already right. Reading them also
 * makes every page for its request, which the fresh nonce of the security policy needs.
 */
export default async function RootLayout({ children }: { children: ReactNode }) {
  const jar = await cookies()
  const theme = findTheme(jar.get(THEME_COOKIE)?.value)
  const system = findUnitSystem(jar.get(UNIT_COOKIE)?.value) ?? 'us'
  return (
    <html lang="en" data-theme={theme}>
      <body>
        <Providers system={system} theme={theme}>{children}</Providers>
      </body>
    </html>
  )
}
