import type { MetadataRoute } from 'next'
import { say } from './_text'

/** What a device is told when the app is installed on it. */
export default function manifest(): MetadataRoute.Manifest {
  return {
    id: '/',
    name: say('shell.name'),
    short_name: say('shell.name'),
    description: say('shell.tagline'),
    start_url: '/',
    scope: '/',
    display: 'standalone',
    background_color: '#f4f1ea',
    theme_color: '#fcfaf5',
    icons: [
      { src: '/icons/icon-192.png', sizes: '192x192', type: 'image/png' },
      { src: '/icons/icon-512.png', sizes: '512x512', type: 'image/png' },
      { src: '/icons/icon-mask-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
    ],
  }
}
