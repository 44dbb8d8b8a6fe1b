import { cacheNames, NavigationRoute, type PrecacheEntry, Serwist } from 'serwist'
import { createFetchExchange } from '@/lib/capture/outbox/fetch-exchange'
import { browserOutbox, openBrowserStore } from '@/lib/capture/outbox/open-browser-outbox'
import { siteHrefFor } from '@/lib/capture/site/site-address'
import { openSiteStore } from '@/lib/capture/site/site-store'

type WorkerScope = typeof globalThis & { __SW_MANIFEST?: (PrecacheEntry | string)[] }
declare const self: WorkerScope

/**
 * The shell and the program lie in the cache, the same for everyone. Pages of the record and answers of the server never do: they are another person's tomorrow. A page that the network does
 * not give opens on what this device keeps.
 */
const worker = new Serwist({
  precacheEntries: self.__SW_MANIFEST ?? [],
  // the shell is one for all its addresses; what the framework asks for beside it is not the shell
  precacheOptions: { ignoreURLParametersMatching: [/^(?!_rsc$)/], cleanupOutdatedCaches: true },
  skipWaiting: false,
  clientsClaim: true,
})
worker.registerRoute(
  new NavigationRoute(
    async ({ request, url }) => {
      try {
        return await fetch(request)
      } catch (cause) {
        if (!(cause instanceof TypeError)) throw cause
        return Response.redirect(new URL(siteHrefFor(url), url.origin), 302)
      }
    },
    { denylist: [/^\/(api|_next|serwist)\//] },
  ),
)
worker.addEventListeners()

type Lasting = Event & { waitUntil(work: Promise<unknown>): void }
type Routing = Lasting & { addRoutes(routes: object[]): Promise<void> }
const SHELLS = 'underwrap-shell-'
/** The shell under its bare address, for the browser itself; each build of it has a cache of its own. */
const SHELL = `${SHELLS}${(self.__SW_MANIFEST ?? []).flatMap((one) => (typeof one !== 'string' && one.url === '/site' ? [one.revision] : []))[0]}`

// Where the browser can, it takes the shell and the program from the cache by itself and need not wake this worker. What is not in the cache comes from here or the network, as without this.
self.addEventListener('install', (event) => {
  if (!('addRoutes' in event)) return
  const installing = event as Routing
  const route = async () => {
    await (await caches.open(SHELL)).add(new Request('/site', { cache: 'reload' }))
    await installing.addRoutes([
      {
        condition: { urlPattern: { pathname: '/_next/static/*' }, requestMethod: 'GET' },
        source: { cacheName: cacheNames.precache },
      },
      {
        condition: { urlPattern: { pathname: '/site', search: '' }, requestMode: 'navigate' },
        source: { cacheName: SHELL },
      },
    ])
  }
  installing.waitUntil(route())
})
self.addEventListener('activate', (event) => {
  const clear = async () => {
    const old = (await caches.keys()).filter((name) => name.startsWith(SHELLS) && name !== SHELL)
    await Promise.all(old.map((name) => caches.delete(name)))
  }
  ;(event as Lasting).waitUntil(clear())
})

self.addEventListener('sync', (event) => {
  if ('tag' in event && event.tag === 'underwrap-outbox') (event as unknown as Lasting).waitUntil(sendWaiting())
})

/** Send what waits of the person who works here; thrown when it did not go, so that the browser asks again later. */
async function sendWaiting(): Promise<void> {
  const owner = await (await openSiteStore())?.owner()
  if (!owner) return
  const nowMs = () => Date.now() + owner.clockAheadMs
  const outbox = browserOutbox(await openBrowserStore(), owner, nowMs)
  const outcome = await outbox.send(createFetchExchange(undefined, '', nowMs))
  if (outcome.kind === 'no-network') throw new Error('the server was not reached')
}
