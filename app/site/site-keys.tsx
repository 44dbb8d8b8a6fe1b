'use client'
import { useState } from 'react'
import { NotSecureNote } from '@/app/_parts/not-secure-note'
import { keyStanding } from '@/lib/capture/signing/signers-here'
import { siteHref } from '@/lib/capture/site/site-address'
import { KeyLine } from './key-line'
import { MakeKey } from './make-key'
import { useKeyRing } from './use-key-ring'
import type { Site } from './use-site'

/** Signing on this device: whose keys are on it, the making of one, the ending of one. Both need the server; signing does not. */
export function SiteKeys({ site }: { site: Site }) {
  const keys = useKeyRing(site.owner.tenant)
  const [said, setSaid] = useState<string | null>(null)
  const endedIn = (fact: string) => site.packs.some((pack) => keyStanding(pack, { fact: fact as never }) === 'ended')
  return (
    <main className="page narrow" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">
            <a href={siteHref({})}>‹ On this device</a>
          </p>
          <h1>Sign on this device</h1>
        </div>
      </div>
      <div className="stack">
        <NotSecureNote />
        {keys.ring === 'none' ? (
          <div className="note refused">
            <strong>This browser keeps no keys.</strong>
            <span>
              Open an ordinary window on the secure address. A private window forgets everything as it closes.
            </span>
          </div>
        ) : null}
        <section className="sheet">
          <h2>How it works</h2>
          <ul className="plain-list">
            <li>Each person makes a key of their own here, once, with a network and their password.</li>
            <li>The key stays on this device. Nobody can copy it off.</li>
            <li>A PIN opens it at each signature. The PIN only gates the key: it proves nothing to others.</li>
            <li>Five wrong PINs in a row destroy the key. What it signed stays signed.</li>
            <li>Every signature made so says in the record that a key of this device made it.</li>
            <li>
              A device is lost: report it, so that its keys are ended on the person’s page in the record. From then on
              nothing that they sign is received.
            </li>
          </ul>
        </section>
        {said ? (
          <p className="note good" role="status">
            {said}
          </p>
        ) : null}
        <section className="sheet">
          <h2>Keys on this device</h2>
          {keys.keys.length === 0 ? <p className="quiet">None yet.</p> : null}
          <ul className="plain-list">
            {keys.keys.map((key) => (
              <KeyLine key={key.fact} site={site} keys={keys} own={key} isEnded={endedIn(key.fact)} say={setSaid} />
            ))}
          </ul>
        </section>
        {typeof keys.ring === 'object' ? <MakeKey site={site} keys={keys} say={setSaid} /> : null}
      </div>
    </main>
  )
}
