'use client'

/** What a reader brings along to tell whose a file is, as chosen and typed. */
export type Trust = { key: File | null; checkpoint: string; fingerprint: string }
export const NO_TRUST: Trust = { key: null, checkpoint: '', fingerprint: '' }

/** Fields for what a reader already trusts. All of them may stay empty. */
export function TrustFields({ trust, onChange }: { trust: Trust; onChange(trust: Trust): void }) {
  return (
    <details className="check-trust">
      <summary>Whose is it? Give something that you trust</summary>
      <p className="quiet">
        A file alone shows that nothing was changed since it was signed, not who signed. One of these, got from the
        holder in another way, shows that too.
      </p>
      <div className="field">
        <label htmlFor="check-fingerprint">Fingerprint of the certificate</label>
        <p className="hint" id="check-fingerprint-hint">
          64 hex digits, as the holder tells them
        </p>
        <input
          id="check-fingerprint"
          value={trust.fingerprint}
          onChange={(event) => onChange({ ...trust, fingerprint: event.target.value })}
          aria-describedby="check-fingerprint-hint"
          autoComplete="off"
          autoCapitalize="none"
          spellCheck={false}
        />
      </div>
      <div className="field">
        <label htmlFor="check-key">Key file</label>
        <p className="hint" id="check-key-hint">
          A log key, or a certificate (PEM or DER)
        </p>
        <input
          id="check-key"
          type="file"
          aria-describedby="check-key-hint"
          onChange={(event) => onChange({ ...trust, key: event.target.files?.[0] ?? null })}
        />
      </div>
      <div className="field">
        <label htmlFor="check-checkpoint">Earlier checkpoint</label>
        <p className="hint" id="check-checkpoint-hint">
          Paste the whole text, from a hand-over or another dossier
        </p>
        <textarea
          id="check-checkpoint"
          rows={5}
          value={trust.checkpoint}
          onChange={(event) => onChange({ ...trust, checkpoint: event.target.value })}
          aria-describedby="check-checkpoint-hint"
          autoCapitalize="none"
          spellCheck={false}
        />
      </div>
    </details>
  )
}
