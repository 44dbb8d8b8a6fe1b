import { createSerwistRoute } from '@serwist/turbopack'

/** The service worker, built with the app: it holds the shell of the screens that work without a network, and the program of every screen. */
export const { dynamic, dynamicParams, revalidate, generateStaticParams, GET } = createSerwistRoute({
  swSrc: 'app/serwist/service-worker.ts',
  useNativeEsbuild: true,
  globDirectory: '.',
  // its start is told in its address behind a #, which what comes from the cache has lost
  globIgnores: ['**/turbopack-worker-*'],
  globPatterns: ['.next/static/**/*.{js,css,woff2,wasm}', 'public/icons/*.png'],
  maximumFileSizeToCacheInBytes: 3_000_000,
  additionalPrecacheEntries: [{ url: '/site', revision: crypto.randomUUID() }],
  esbuildOptions: { sourcemap: false },
})
