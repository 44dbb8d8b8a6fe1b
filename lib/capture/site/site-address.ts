/** A place in the screens that work without a network. */
export type SitePlace = {
  repair: string | null
  point: string | null
  attempt: number | null
  form: string | null
  /** Fact to correct. */
  correct: string | null
  /** Refused entry to change and send again. */
  again: string | null
  /** The form copies from a paper tally: the mark of its printed sheet, or `other` paper. */
  paper: string | null
  show: 'outbox' | 'signing' | null
  /** Project in which a repair is opened. */
  open: string | null
}

/** The list of what this device keeps. */
export const SITE_START: SitePlace = {
  repair: null,
  point: null,
  attempt: null,
  form: null,
  correct: null,
  again: null,
  paper: null,
  show: null,
  open: null,
}

/**
 * The address of a place: `/site#repair=MD-0042&point=16`. It stands behind the `#` because there is one page for all places: the browser takes that page from its cache for each of them, without
 * waking the service worker, and no server is told what is worked on.
 */
export function siteHref(place: Partial<SitePlace>): string {
  const params = new URLSearchParams()
  for (const [name, value] of Object.entries(place)) if (value !== null) params.set(name, String(value))
  const named = params.toString()
  return named === '' ? '/site' : `/site#${named}`
}

/** Whether this program runs in the page of these places: not on the server, and not in another page. */
export function isSitePage(): boolean {
  return typeof location !== 'undefined' && location.pathname === siteHref({})
}

const SHOWN = ['outbox', 'signing'] as const

/** The place that the end of an address names, from its `#` on; null where it names an element of the page and no place. */
export function sitePlaceOf(hash: string): SitePlace | null {
  if (hash !== '' && !hash.includes('=')) return null
  const params = new URLSearchParams(hash.replace(/^#/, ''))
  return {
    repair: params.get('repair'),
    point: params.get('point'),
    attempt: attemptIn(params),
    form: params.get('form'),
    correct: params.get('correct'),
    again: params.get('again'),
    paper: params.get('paper'),
    show: SHOWN.find((one) => one === params.get('show')) ?? null,
    open: params.get('open'),
  }
}

/** Where a page of the record stands on this device when there is no network: a repair, point or form keeps its place, anything else is the list of pinned repairs. */
export function siteHrefFor(page: URL): string {
  const [, number, point, what, which] =
    /^\/repairs\/([^/]+)(?:\/points\/([^/]+)(?:\/(?:(record|correct)\/([^/]+)|transcribe))?)?\/?$/.exec(
      page.pathname,
    ) ?? []
  if (!number || number === 'new') return siteHref(SITE_START)
  return siteHref({
    repair: plain(number),
    point: point ? plain(point) : null,
    attempt: attemptIn(page.searchParams),
    form: what === 'record' && which ? plain(which) : null,
    correct: what === 'correct' && which ? plain(which) : null,
    paper: page.searchParams.get('paper') ?? page.searchParams.get('sheet'),
  })
}

function attemptIn(params: URLSearchParams): number | null {
  const attempt = Number(params.get('attempt') ?? '')
  return Number.isInteger(attempt) && attempt > 0 ? attempt : null
}

function plain(part: string): string {
  try {
    return decodeURIComponent(part)
  } catch (cause) {
    if (cause instanceof URIError) return part
    throw cause
  }
}
