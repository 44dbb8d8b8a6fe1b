import Link from 'next/link'

/** Where no phone or camera may go: print the sheet of this point, or copy a filled one into the record. */
export function TallyWays({ base, attempt }: { base: string; attempt: number }) {
  return (
    <p className="row" style={{ marginTop: 12 }}>
      <Link className="button plain" href={`${base}/tally?attempt=${attempt}`}>
        Print a tally sheet
      </Link>
      <Link className="button plain" href={`${base}/transcribe?attempt=${attempt}`}>
        From a paper tally
      </Link>
    </p>
  )
}
