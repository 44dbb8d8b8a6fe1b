/** One thing that waits for a person, with where it is done. */
export type WaitingLine = {
  repair: string
  point: string | null
  href: string
  title: string
  detail: string
  kind: 'release' | 'record' | 'decide' | 'sign' | 'check'
}
