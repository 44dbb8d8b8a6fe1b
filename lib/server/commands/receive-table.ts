import { z } from 'zod'
import { Sha256 } from '@/lib/domain/facts/fact'
import type { OutboxCommand } from '@/lib/domain/outbox/exchange'
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
import { submitPoint } from './submit-point'
import { withdrawRelease } from './withdraw-release'

/** How one command is taken from an outbox. `observation`: its times are the device's and must be stated; a `decision` is made when it is received, on the heads it names. */
export type Received = { kind: 'observation' | 'decision'; run: Command<Kept> }

const observation = (run: Command<Kept>): Received => ({ kind: 'observation', run })
const decision = (run: Command<Kept>): Received => ({ kind: 'decision', run })

/** The commands that an outbox may hold, but for photos, which bring bytes. Each authorises by itself, as from its server action. */
export const RECEIVED: Readonly<Record<Exclude<OutboxCommand, 'attach-photo'>, Received>> = {
  'record-point': observation(recordPoint),
  'correct-record': observation(correctRecord),
  'annotate-photo': observation(annotatePhoto),
  'note-photo-disagrees': observation(notePhotoDisagrees),
  'note-event': observation(noteEvent),
  'record-material-used': observation(recordMaterialUsed),
  'check-instrument': observation(checkInstrument),
  'check-clock': observation(checkClock),
  'register-device': observation(registerDevice),
  'raise-nonconformance': observation(raiseNonconformance),
  'open-repair': observation(openRepair),
  'open-attempt': decision(openAttempt),
  'mark-not-applicable': decision(markNotApplicable),
  'choose-governs': decision(chooseGoverns),
  'submit-point': decision(submitPoint),
  'refuse-release': decision(refuseRelease),
  'withdraw-release': decision(withdrawRelease),
}

/** How a command is taken in, with the bytes of its photo where it attaches one. */
export function receivedBy(command: OutboxCommand, readPhoto: PhotoBytes): Received {
  return command === 'attach-photo'
    ? observation((actor, input) => attachPhoto(actor, input, readPhoto))
    : RECEIVED[command]
}

/** The digest that attaching a photo answered, null for any other outcome. */
export function attachedDigest(value: Kept): Sha256 | null {
  const attached = z.object({ sha256: Sha256 }).safeParse(value)
  return attached.success ? attached.data.sha256 : null
}
