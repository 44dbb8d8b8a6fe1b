import * as z from 'zod'
import { Sha256 } from '@/lib/domain/facts/fact'
import type { OutboxCommand } from '@/lib/domain/outbox/exchange'
import { acceptOnDevice } from './accept-on-device'
import { annotatePhoto } from './annotate-photo'
import { attachPhoto, type PhotoBytes } from './attach-photo'
import { checkClock } from './check-clock'
import { checkInstrument } from './check-instrument'
import { chooseGoverns } from './choose-governs'
import type { Command } from './command'
import { correctRecord } from './correct-record'
import type { Kept } from './desk'
import { markNotApplicable } from './mark-not-applicable'
import { noteEvent } from './note-event'
import { notePhotoDisagrees } from './note-photo-disagrees'
import { openAttempt } from './open-attempt'
import { openRepair } from './open-repair'
import { raiseNonconformance } from './raise-nonconformance'
import { recordMaterialUsed } from './record-material-used'
import { recordPoint } from './record-point'
import { refuseRelease } from './refuse-release'
import { registerDevice } from './register-device'
import { releaseOnDevice } from './release-on-device'
import { settleConflict } from './settle-conflict'
import { signOnDevice } from './sign-on-device'
import { submitPoint } from './submit-point'
import { withdrawRelease } from './withdraw-release'

/** How one command is taken from an outbox. An observation's times are the device's and must be stated. */
export type Received = Command<Kept>

/** The commands that an outbox may hold, but for photos, which bring bytes. Each authorises by itself, as from its server action. */
export const RECEIVED: Readonly<Record<Exclude<OutboxCommand, 'attach-photo'>, Received>> = {
  'record-point': recordPoint,
  'correct-record': correctRecord,
  'annotate-photo': annotatePhoto,
  'note-photo-disagrees': notePhotoDisagrees,
  'note-event': noteEvent,
  'record-material-used': recordMaterialUsed,
  'check-instrument': checkInstrument,
  'check-clock': checkClock,
  'register-device': registerDevice,
  'raise-nonconformance': raiseNonconformance,
  'open-repair': openRepair,
  'open-attempt': openAttempt,
  'mark-not-applicable': markNotApplicable,
  'choose-governs': chooseGoverns,
  'settle-conflict': settleConflict,
  'submit-point': submitPoint,
  'refuse-release': refuseRelease,
  'withdraw-release': withdrawRelease,
  'sign-on-device': signOnDevice,
  'release-on-device': releaseOnDevice,
  'accept-on-device': acceptOnDevice,
}

/** How a command is taken in, with the bytes of its photo where it attaches one. */
export function receivedBy(command: OutboxCommand, readPhoto: PhotoBytes): Received {
  return command === 'attach-photo' ? (actor, input) => attachPhoto(actor, input, readPhoto) : RECEIVED[command]
}

/** The digest that attaching a photo answered, null for any other outcome. */
export function attachedDigest(value: Kept): Sha256 | null {
  const attached = z.object({ sha256: Sha256 }).safeParse(value)
  return attached.success ? attached.data.sha256 : null
}
