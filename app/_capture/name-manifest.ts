const MANIFEST = '/manifest.webmanifest'

/** Name the manifest in a page that was sent without it, so that the app can be put on the home screen from there too. */
export function nameManifest(): void {
  if (document.head.querySelector('link[rel=manifest]')) return
  const link = document.createElement('link')
  link.rel = 'manifest'
  link.href = MANIFEST
  document.head.append(link)
}
