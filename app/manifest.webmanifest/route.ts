import type { MetadataRoute } from 'next'

/** What a phone needs to keep Underwrap on its home screen. */
const MANIFEST: MetadataRoute.Manifest = {
  name: 'Underwrap',
  short_name: 'Underwrap',
  description: 'The record of engineered composite repairs of leaking pipes, hold point by hold point',
  start_url: '/waiting',
  scope: '/',
  display: 'standalone',
  background_color: '#f4f3ee',
  theme_color: '#14181b',
  icons: [
    { src: '/icons/icon-192.png', sizes: '192x192', type: 'image/png' },
    { src: '/icons/icon-512.png', sizes: '512x512', type: 'image/png' },
    { src: '/icons/icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
  ],
}

export const dynamic = 'force-static'

/** The manifest, the same for everyone. */
export function GET(): Response {
  return Response.json(MANIFEST, { headers: { 'Content-Type': 'application/manifest+json' } })
}
