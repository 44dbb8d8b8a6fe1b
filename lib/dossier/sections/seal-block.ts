import { shortDigest } from '@/lib/evidence/checkpoint'
import { type Block, mono, plain, type Span, strong } from '../blocks'
import type { DossierContext } from '../dossier-context'
import type { DossierSeal } from '../dossier-seal'

/** On the cover: where the file is checked, the checkpoint it holds, who signed it and what that proves. Nothing for a file without a seal. */
export function sealBlocks({ seal, checkCode, head }: DossierContext): Block[] {
  if (!seal || !checkCode) return []
  const { checkpoint, checkAddress } = seal
  const lines: Span[][] = [
    [
      ...(head.kind === 'issue' ? [] : [strong('Made for review, not issued. ', 'in-question')]),
      strong('Check this file at '),
      strong(checkAddress),
      plain(' or with the checker alone; it carries every fact, proof and photo that it rests on.', 'soft'),
    ],
    [
      plain('Checkpoint of the log '),
      mono(checkpoint.origin),
      plain(`, ${checkpoint.size} facts, root `),
      mono(checkpoint.root),
    ],
    [
      plain('Short digest of the checkpoint, to compare by eye: '),
      strong(shortDigest(new Uint8Array(Buffer.from(checkpoint.root, 'base64')))),
    ],
    [plain(signerText(seal), 'soft')],
  ]
  return [{ kind: 'seal', code: checkCode, codeAlt: `QR code that leads to ${checkAddress}`, lines }]
}

function signerText({ signer: { certificate, isStamped } }: DossierSeal): string {
  const kind = certificate.isMadeHere
    ? 'a certificate that this store made itself: it proves that nothing changed, not who signed'
    : 'the certificate of the organisation'
  return `Signed under ${kind} (${certificate.subject}, SHA-256 ${certificate.sha256})${isStamped ? ', with a time stamp' : ', without a time stamp'}.`
}
