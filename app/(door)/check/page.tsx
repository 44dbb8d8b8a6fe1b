import type { Metadata } from 'next'
import '@/app/_style/check.css'
import { CheckDesk } from './check-desk'

export const metadata: Metadata = {
  title: 'Check a dossier',
  description:
    'Whether a dossier or a log export is whole, whose it is, and whether its verdicts follow from its readings',
}

/** Checks a file in the reader's own browser; it asks nothing of the server and is open to anyone. */
export default function CheckPage() {
  return (
    <div className="check">
      <h1>Check a dossier</h1>
      <p className="check-lead">
        Is it whole, whose is it, and do its verdicts follow from its readings? Your file is read here, in this browser:
        nothing of it is sent, and once this page is open it works without a network.
      </p>
      <CheckDesk />
    </div>
  )
}
