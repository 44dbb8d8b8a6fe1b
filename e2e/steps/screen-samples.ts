/** Where an example of a route is: an address, or the first link to one of its kind on another screen. */
export type Sample = string | { linkOn: string }
export type SampleOf = {
  /** Who looks; nobody signed in where it is null. */
  as: string | null
  at: readonly Sample[]
  /** A repair that the device takes along first. */
  takes?: string
  /** Open in a store of its own, which is empty. */
  isFirstStart?: boolean
  /** Not in the demonstration: the browser test or step that brings it about looks at it. */
  lookedAtIn?: string
}

const INSPECTOR = 'tobias-wrenfield'
const AUDITOR = 'hesper-noorland'
const ADMINISTRATOR = 'imre-valecross'
const by = (as: string, ...at: Sample[]): SampleOf => ({ as, at })
const open = (...at: Sample[]): SampleOf => ({ as: null, at })

/** Examples of every screen in the demonstration, and who looks. A new screen without one fails the test of access. */
export const SAMPLES: Readonly<Record<string, SampleOf>> = {
  '/': by(INSPECTOR, '/'),
  '/_not-found': by(INSPECTOR, '/no-such-screen'),
  '/accounts': by(ADMINISTRATOR, '/accounts'),
  '/audit': by(AUDITOR, '/audit'),
  '/audit/facts/[id]': by(AUDITOR, { linkOn: '/audit' }),
  '/audit/sample': by(AUDITOR, '/audit/sample'),
  '/audit/search': by(AUDITOR, '/audit/search?q=FP-118'),
  '/batches': by(INSPECTOR, '/batches'),
  '/batches/[name]': by(INSPECTOR, '/batches/FP-118'),
  '/batches/[name]/label': by(INSPECTOR, '/batches/FP-118/label'),
  '/check': open('/check'),
  '/instruments': by(INSPECTOR, '/instruments'),
  '/instruments/[name]': by(INSPECTOR, '/instruments/HD-03'),
  '/instruments/[name]/label': by(INSPECTOR, '/instruments/HD-03/label'),
  '/invitation/[token]': open('/invitation/no-such-token'),
  '/nonconformances': by(INSPECTOR, '/nonconformances'),
  '/nonconformances/[number]': by(INSPECTOR, '/nonconformances/NCR-0009'),
  '/nonconformances/new': by(INSPECTOR, '/nonconformances/new?repair=MD-0043&point=07&attempt=1'),
  '/people': by(INSPECTOR, '/people'),
  '/people/[id]': by(INSPECTOR, '/people/maren-osterfalk'),
  '/plans': by(INSPECTOR, '/plans'),
  '/plans/[number]': by(INSPECTOR, '/plans/ITP-MD-12'),
  '/plans/[number]/draft': by(INSPECTOR, '/plans/ITP-MD-12/draft'),
  '/plans/new': by(INSPECTOR, '/plans/new'),
  '/projects': by(ADMINISTRATOR, '/projects'),
  '/projects/[name]': by(ADMINISTRATOR, '/projects/QDM-SHAFT-2'),
  '/register': by(INSPECTOR, '/register'),
  '/repairs': by(INSPECTOR, '/repairs'),
  '/repairs/[number]': by(INSPECTOR, '/repairs/MD-0042', '/repairs/MD-0043'),
  '/repairs/[number]/accept': by(INSPECTOR, '/repairs/MD-0043/accept'),
  '/repairs/[number]/design': by(INSPECTOR, '/repairs/MD-0042/design'),
  '/repairs/[number]/dossier': by(INSPECTOR, '/repairs/MD-0042/dossier'),
  '/repairs/[number]/label': by(INSPECTOR, '/repairs/MD-0042/label'),
  '/repairs/[number]/notices': by(INSPECTOR, '/repairs/MD-0042/notices'),
  '/repairs/[number]/points/[point]': by(
    INSPECTOR,
    '/repairs/MD-0042/points/16?attempt=1',
    '/repairs/MD-0043/points/05?attempt=1',
    '/repairs/MD-0043/points/09?attempt=1',
  ),
  '/repairs/[number]/points/[point]/check/[fact]': { as: INSPECTOR, at: [], lookedAtIn: 'e2e/steps/paper.ts' },
  '/repairs/[number]/points/[point]/tally': by(INSPECTOR, '/repairs/MD-0043/points/16/tally?attempt=1'),
  '/repairs/[number]/points/[point]/transcribe': by(INSPECTOR, '/repairs/MD-0043/points/14/transcribe?attempt=1'),
  '/repairs/[number]/points/[point]/correct/[fact]': by(INSPECTOR, { linkOn: '/repairs/MD-0042/points/16?attempt=3' }),
  '/repairs/[number]/points/[point]/record/[type]': by(
    INSPECTOR,
    '/repairs/MD-0043/points/16/record/hardness?attempt=1',
    '/repairs/MD-0043/points/14/record/resin-mix?attempt=1',
    '/repairs/MD-0043/points/15/record/cure?attempt=1',
  ),
  '/repairs/[number]/quantities': by(INSPECTOR, '/repairs/MD-0042/quantities'),
  '/repairs/[number]/trail': by(INSPECTOR, '/repairs/MD-0042/trail'),
  '/repairs/new': by(INSPECTOR, '/repairs/new'),
  '/scan': by(INSPECTOR, '/scan'),
  '/setup': { as: null, at: ['/setup'], isFirstStart: true },
  '/sign-in': open('/sign-in'),
  '/site': {
    as: INSPECTOR,
    takes: 'MD-0043',
    at: [
      '/site',
      '/site#show=outbox',
      '/site#repair=MD-0043',
      '/site#repair=MD-0043&point=05',
      '/site#repair=MD-0043&point=05&form=cleanliness',
    ],
  },
  '/specifications': by(INSPECTOR, '/specifications'),
  '/specifications/[number]': by(INSPECTOR, '/specifications/QP-MD-12'),
  '/specifications/[number]/draft': by(INSPECTOR, '/specifications/QP-MD-12/draft'),
  '/specifications/new': by(INSPECTOR, '/specifications/new'),
  '/trace': by(INSPECTOR, '/trace'),
  '/trace/batch/[name]': by(INSPECTOR, '/trace/batch/FP-118'),
  '/trace/instrument/[name]': by(INSPECTOR, '/trace/instrument/HD-03'),
  '/trace/person/[name]': by(INSPECTOR, '/trace/person/dorrit-akande'),
  '/trace/repair/[name]': by(INSPECTOR, '/trace/repair/MD-0042'),
  '/waiting': by(INSPECTOR, '/waiting'),
}
