import type { SignedCheckpoint } from '@/lib/evidence/checkpoint'
import { shortDigest } from '@/lib/evidence/checkpoint'
import type { Found } from '../check-options'
import type { Certificate } from '../cms/certificate'
import type { Ledger } from '../ledger'
import type { Attachments } from '../pdf/read-attachments'
import type { Trusted } from '../trusted'
import { judgeWhose, rootsOfEarlier } from '../whose'
import { checkDeviceSignatures } from './check-device-signatures'
import { checkEarlier } from './check-earlier'
import { checkLogKeys, keysTaken } from './check-keys'
import { checkInclusion, readCheckpoint } from './check-log'
import { checkPhotos, type PhotoObject, type PhotoTally } from './check-photos'
import { checkVerdicts, isKnownRules } from './check-verdicts'
import type { Manifest } from './manifest-schema'
import { type FactLine, readFacts } from './read-facts'
import { type AttachmentDigests, readManifest } from './read-manifest'

/** What the file holds beside its sheets. */
export type RecordParts = {
  attachments: Attachments
  digests: AttachmentDigests
  photos: PhotoObject[]
  certificate: Certificate | null
  stampedAt: string | null
}

/** Check the record within a dossier: facts in the log, keys, photos, issues, verdicts, and whose it is. */
export function checkRecord(parts: RecordParts, ledger: Ledger, found: Found, trusted: Trusted): void {
  const { attachments, photos, certificate } = parts
  const start = ledger.breakCount
  const manifest = readManifest(attachments, parts.digests, ledger)
  if (!manifest) {
    ledger.leaveOpen('record', 'Facts, photos and verdicts could not be checked: the manifest cannot be read.')
    return
  }
  const lines = readFacts(attachments, isKnownRules(manifest.rules), ledger)
  ledger.prove('attachments', `All six attached files are there and are those that the manifest names.`, start)
  const beforeLog = ledger.breakCount
  const checkpoint = readCheckpoint(attachments['checkpoint.txt'], manifest, ledger)
  if (checkpoint) checkInclusion(lines, manifest, checkpoint, ledger)
  const facts = lines.flatMap((line) => line.fact ?? [])
  const keys = keysTaken(facts)
  checkLogKeys(keys, manifest.vkey, ledger)
  if (certificate && keys.certificates.at(-1)?.certificateSha256 !== certificate.sha256)
    ledger.broken('certificate-not-last', `certificate with SHA-256 ${certificate.sha256}`)
  if (checkpoint) tellLog(lines, manifest, checkpoint, beforeLog, ledger)
  const beforeDevices = ledger.breakCount
  tellDevices(checkDeviceSignatures(facts, ledger), beforeDevices, ledger)
  const beforePhotos = ledger.breakCount
  const tally = checkPhotos(facts, manifest, photos, ledger)
  tellPhotos(tally, beforePhotos, ledger)
  const beforeEarlier = ledger.breakCount
  const { withoutLog } = checkEarlier(facts, manifest, checkpoint, ledger)
  tellEarlier(manifest, withoutLog, beforeEarlier, ledger)
  const beforeVerdicts = ledger.breakCount
  found.verdicts = checkVerdicts(lines, manifest, ledger)
  if (isKnownRules(manifest.rules))
    ledger.prove(
      'verdicts',
      `Every verdict follows from the readings: ${found.verdicts.agreed} of ${found.verdicts.total} recomputed and the same, by the rules “${manifest.rules}” at ${manifest.asOf.moment}.`,
      beforeVerdicts,
    )
  if (!checkpoint) return
  found.about = {
    kind: manifest.kind,
    organisation: manifest.organisation,
    isDemo: manifest.isDemo,
    repair: manifest.repair,
    revision: manifest.revision,
    purpose: manifest.purpose,
    asOf: manifest.asOf.moment,
    factCount: lines.length,
    photoCount: tally.printed,
    origin: checkpoint.origin,
    logSize: checkpoint.size,
    shortDigest: shortDigest(checkpoint.root),
    vkey: manifest.vkey,
    certificate: certificate && {
      sha256: certificate.sha256,
      subject: certificate.subject,
      isSelfSigned: certificate.isSelfSigned,
    },
    stampedAt: parts.stampedAt,
  }
  const signer = {
    keys,
    checkpoint,
    certificateSha256: certificate?.sha256 ?? null,
    rootAt: rootsOfEarlier(manifest.earlier),
  }
  found.signer = judgeWhose(trusted, signer, ledger)
}

function tellLog(
  lines: readonly FactLine[],
  { streams }: Manifest,
  { size, root }: SignedCheckpoint,
  before: number,
  ledger: Ledger,
): void {
  ledger.prove(
    'log',
    `All ${lines.length} facts of ${streams.length} streams are in the log of ${size} facts whose head is ${shortDigest(root)}, each as it was received, none of them left out between the first and the last.`,
    before,
  )
  ledger.leaveOpen(
    'later-facts',
    'That the log held no further facts of these streams by then: the whole log shows that, or a later checkpoint.',
  )
  ledger.leaveOpen(
    'sheets',
    'That the printed sheets say what the attached record says: compare them where it matters.',
  )
  ledger.leaveOpen(
    'true',
    'That what was observed and keyed in was true: the record shows who said it, when, and that it stands as it was said.',
  )
}

function tellDevices(count: number, before: number, ledger: Ledger): void {
  if (count === 0) return
  ledger.prove(
    'device-signatures',
    `${count} ${count === 1 ? 'signature was' : 'signatures were'} made with the keys of devices, each over exactly what it signs.`,
    before,
  )
  ledger.leaveOpen(
    'device-hands',
    'That the person named held the device and knew its PIN: the key says which device signed, not whose hand.',
  )
}

function tellPhotos({ printed, missing, disposed }: PhotoTally, before: number, ledger: Ledger): void {
  ledger.prove(
    'photos',
    `${printed} photos are in the file, each the one that was recorded, and no other photo is.`,
    before,
  )
  if (missing > 0)
    ledger.leaveOpen(
      'photos-missing',
      `${missing} photos of the record are not in the file: they were gone or damaged when it was made.`,
    )
  if (disposed > 0)
    ledger.leaveOpen('photos-disposed', `${disposed} photos are not in the file: a signed disposal removed them.`)
}

function tellEarlier({ kind, revision, earlier }: Manifest, withoutLog: number, before: number, ledger: Ledger): void {
  const which = kind === 'issue' ? `This is revision ${revision}` : 'This is a copy for review'
  ledger.prove(
    'revisions',
    earlier.length === 0
      ? `${which}; the record names no issue before it.`
      : `${which}, after ${earlier.length} earlier ${earlier.length === 1 ? 'issue' : 'issues'}; the log still holds all that it held at ${earlier.length - withoutLog} of them.`,
    before,
  )
  if (withoutLog > 0)
    ledger.leaveOpen(
      'earlier-without-log',
      `That the log holds all that it held at ${withoutLog} earlier issues: they were made before it had checkpoints.`,
    )
}
