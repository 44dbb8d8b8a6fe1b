import { v7 } from 'uuid'
import { decimal } from '@/lib/domain/decimal'
import type { Actor } from '@/lib/server/auth/actor'
import { acceptRepair } from '@/lib/server/commands/accept-repair'
import { agreeDoesNotBlock } from '@/lib/server/commands/agree-does-not-block'
import { annotatePhoto } from '@/lib/server/commands/annotate-photo'
import { answerNotice } from '@/lib/server/commands/answer-notice'
import { answerQuery } from '@/lib/server/commands/answer-query'
import { approveDisposition } from '@/lib/server/commands/approve-disposition'
import { assessNonconformance } from '@/lib/server/commands/assess-nonconformance'
import { checkClock } from '@/lib/server/commands/check-clock'
import { checkInstrument } from '@/lib/server/commands/check-instrument'
import { checkTranscription } from '@/lib/server/commands/check-transcription'
import { chooseGoverns } from '@/lib/server/commands/choose-governs'
import { closeNonconformance } from '@/lib/server/commands/close-nonconformance'
import { containNonconformance } from '@/lib/server/commands/contain-nonconformance'
import { correctRecord } from '@/lib/server/commands/correct-record'
import { countBatch } from '@/lib/server/commands/count-batch'
import { decideImpact } from '@/lib/server/commands/decide-impact'
import { decideStandsOrRedo } from '@/lib/server/commands/decide-stands-or-redo'
import { dischargeCondition } from '@/lib/server/commands/discharge-condition'
import { endPerson } from '@/lib/server/commands/end-person'
import { endRole } from '@/lib/server/commands/end-role'
import { endSigningKey } from '@/lib/server/commands/end-signing-key'
import { findInstrumentWrong } from '@/lib/server/commands/find-instrument-wrong'
import { finishAction } from '@/lib/server/commands/finish-action'
import { finishCorrectiveAction } from '@/lib/server/commands/finish-corrective-action'
import { grantRole } from '@/lib/server/commands/grant-role'
import { holdRepair } from '@/lib/server/commands/hold-repair'
import { invitePerson } from '@/lib/server/commands/invite-person'
import { issueBatch } from '@/lib/server/commands/issue-batch'
import { issueDossier } from '@/lib/server/commands/issue-dossier'
import { issuePlan } from '@/lib/server/commands/issue-plan'
import { issueSpecification } from '@/lib/server/commands/issue-specification'
import { judgeLikeness } from '@/lib/server/commands/judge-likeness'
import { judgePhoto } from '@/lib/server/commands/judge-photo'
import { liftQuarantine } from '@/lib/server/commands/lift-quarantine'
import { markNotApplicable } from '@/lib/server/commands/mark-not-applicable'
import { nameCorrectiveAction } from '@/lib/server/commands/name-corrective-action'
import { nameParty } from '@/lib/server/commands/name-party'
import { noteEvent } from '@/lib/server/commands/note-event'
import { notePhotoDisagrees } from '@/lib/server/commands/note-photo-disagrees'
import { notifyOwner } from '@/lib/server/commands/notify-owner'
import { openAttempt } from '@/lib/server/commands/open-attempt'
import { openBatch } from '@/lib/server/commands/open-batch'
import { openProject } from '@/lib/server/commands/open-project'
import { openRepair } from '@/lib/server/commands/open-repair'
import { proposeDisposition } from '@/lib/server/commands/propose-disposition'
import { quarantineBatch } from '@/lib/server/commands/quarantine-batch'
import { quarantineInstrument } from '@/lib/server/commands/quarantine-instrument'
import { raiseNonconformance } from '@/lib/server/commands/raise-nonconformance'
import { raiseQuery } from '@/lib/server/commands/raise-query'
import { recallBatch } from '@/lib/server/commands/recall-batch'
import { receiveBatch } from '@/lib/server/commands/receive-batch'
import { recordCertificate } from '@/lib/server/commands/record-certificate'
import { recordMakerLetter } from '@/lib/server/commands/record-maker-letter'
import { recordMaterialUsed } from '@/lib/server/commands/record-material-used'
import { recordPoint } from '@/lib/server/commands/record-point'
import { recordQualification } from '@/lib/server/commands/record-qualification'
import { recordTransmittal } from '@/lib/server/commands/record-transmittal'
import { refuseBatch } from '@/lib/server/commands/refuse-batch'
import { refuseRelease } from '@/lib/server/commands/refuse-release'
import { registerDevice } from '@/lib/server/commands/register-device'
import { registerInstrument } from '@/lib/server/commands/register-instrument'
import { registerPerson } from '@/lib/server/commands/register-person'
import { rejectDisposition } from '@/lib/server/commands/reject-disposition'
import { rejectNonconformance } from '@/lib/server/commands/reject-nonconformance'
import { releasePoint } from '@/lib/server/commands/release-point'
import { renamePerson } from '@/lib/server/commands/rename-person'
import { reopenNonconformance } from '@/lib/server/commands/reopen-nonconformance'
import { returnBatch } from '@/lib/server/commands/return-batch'
import { reviseLife } from '@/lib/server/commands/revise-life'
import { savePlanDraft } from '@/lib/server/commands/save-plan-draft'
import { saveSpecificationDraft } from '@/lib/server/commands/save-specification-draft'
import { sendNotice } from '@/lib/server/commands/send-notice'
import { settleConflict } from '@/lib/server/commands/settle-conflict'
import { signFacts } from '@/lib/server/commands/sign-facts'
import { startAction } from '@/lib/server/commands/start-action'
import { submitPoint } from '@/lib/server/commands/submit-point'
import { takeSigningKey } from '@/lib/server/commands/take-signing-key'
import { verifyNonconformance } from '@/lib/server/commands/verify-nonconformance'
import { voidDuplicate } from '@/lib/server/commands/void-duplicate'
import { waiveHold } from '@/lib/server/commands/waive-hold'
import { wasteBatch } from '@/lib/server/commands/waste-batch'
import { withdrawRelease } from '@/lib/server/commands/withdraw-release'
import { PASSWORD } from '@/test/commands/world'
import { openedFact, PERMIT, PLAN, SPECIFICATION } from '@/test/commands/world-facts'
import type { Row } from './authorisation-row'
import { PUBLIC_KEY } from './prepared-signing'

const self = (actor: Actor) => ({
  by: 'password',
  person: actor.tenant === 'tenant-a' ? actor.person : 'QI',
  password: PASSWORD,
})
const roleOf = (actor: Actor) => actor.grants[0]?.role

// biome-ignore format: one row a line
export const ACTION_ROWS: readonly Row[] = [
  { name: 'recordPointAction', run: recordPoint, may: ['technician', 'lead', 'inspector'], input: () => ({ stream: 'repair:R-1', body: { point: '05', attempt: 1, record: PERMIT } }) },
  { name: 'correctRecordAction', run: correctRecord, may: ['lead'], input: ({ names }) => ({ stream: 'repair:R-1', body: { target: names.record, changes: [{ path: ['permitNo'], from: 'P-77', to: 'P-78' }], reason: 'digits swapped' } }) }, // others meet another person’s entry
  { name: 'checkTranscriptionAction', run: checkTranscription, may: ['technician', 'lead', 'inspector', 'engineer', 'stores', 'in-service inspector'], input: ({ names }) => ({ stream: 'repair:R-1', body: { point: '06', attempt: 1, record: names.copied, corrections: [], result: 'agrees' } }) },
  { name: 'submitPointAction', run: submitPoint, may: ['technician', 'lead', 'inspector', 'engineer', 'stores', 'in-service inspector'], input: async ({ heads }) => ({ stream: 'repair:R-1', body: { point: '05', attempt: 1, heads: await heads() } }) },
  { name: 'releasePointAction', run: releasePoint, may: ['inspector'], input: async ({ heads }, actor) => ({ stream: 'repair:R-1', body: { point: '05', attempt: 1, party: 'inspector', scope: { kind: 'whole' }, heads: await heads() }, signer: self(actor) }) },
  { name: 'refuseReleaseAction', run: refuseRelease, may: ['inspector'], input: async ({ heads }) => ({ stream: 'repair:R-1', body: { point: '05', attempt: 1, party: 'inspector', reason: 'board not legible', heads: await heads() } }) },
  { name: 'withdrawReleaseAction', run: withdrawRelease, may: ['inspector'], input: ({ names }) => ({ stream: 'repair:R-1', body: { release: names.release, cause: 'weep', reason: 'seen at the ring' } }) },
  { name: 'openAttemptAction', run: openAttempt, may: ['lead', 'inspector'], input: () => ({ stream: 'repair:R-1', body: { points: ['05'], attempt: 2, reason: 'from the start' } }) },
  { name: 'markNotApplicableAction', run: markNotApplicable, may: ['inspector', 'engineer'], input: () => ({ stream: 'repair:R-1', body: { point: '06', attempt: 1, reason: 'no such surface' } }) },
  { name: 'chooseGovernsAction', run: chooseGoverns, may: ['inspector'], input: ({ names }) => ({ stream: 'repair:R-1', body: { point: '05', attempt: 1, record: names.record, over: [names.other], reason: 'the earlier one' } }) },
  { name: 'signFactsAction', run: signFacts, may: ['technician', 'lead', 'inspector', 'engineer', 'stores', 'in-service inspector'], input: ({ names }, actor) => ({ stream: 'repair:R-1', point: '05', attempt: 1, meaning: 'checked', role: roleOf(actor), covers: [names.record], signer: self(actor) }) },
  { name: 'takeSigningKeyAction', run: takeSigningKey, may: ['technician', 'lead', 'inspector', 'client', 'engineer', 'stores', 'in-service inspector', 'auditor', 'administrator'], input: (_world, actor) => ({ stream: 'device:tab-9', body: { algorithm: 'ECDSA P-256 SHA-256', publicKey: PUBLIC_KEY }, id: v7(), signer: self(actor) }) },
  { name: 'endSigningKeyAction', run: endSigningKey, may: ['administrator'], input: ({ names }) => ({ stream: 'device:tab-2', body: { key: names.key, reason: 'lost in the sump' } }) }, // and its holder
  { name: 'settleConflictAction', run: settleConflict, may: ['inspector'], input: ({ names }) => ({ stream: 'repair:R-1', body: { conflict: names.conflict, ruling: 'seen', reason: 'decided anew' } }) },
  { name: 'noteEventAction', run: noteEvent, may: ['technician', 'lead', 'inspector', 'client', 'engineer', 'stores', 'in-service inspector'], input: () => ({ stream: 'repair:R-1', body: { event: 'stopped', remark: 'gas alarm' } }) },
  { name: 'recordMaterialUsedAction', run: recordMaterialUsed, may: ['technician', 'lead', 'inspector', 'stores'], input: () => ({ stream: 'repair:R-1', body: { point: '05', attempt: 1, batch: 'batch:FP-1', amount: 'one kit' } }) },
  { name: 'judgePhotoAction', run: judgePhoto, may: ['inspector'], input: ({ names }) => ({ stream: 'repair:R-1', body: { photo: names.photo, decision: 'accepted', reason: 'legible' } }) },
  { name: 'annotatePhotoAction', run: annotatePhoto, may: ['technician', 'lead', 'inspector', 'stores', 'in-service inspector'], input: ({ names }) => ({ stream: 'repair:R-1', body: { photo: names.photo, shapes: [{ kind: 'ring', x: 0.5, y: 0.5 }] } }) },
  { name: 'notePhotoDisagreesAction', run: notePhotoDisagrees, may: ['technician', 'lead', 'inspector', 'client', 'engineer', 'stores', 'in-service inspector'], input: ({ names }) => ({ stream: 'repair:R-1', body: { photo: names.photo, record: names.record, shows: '0.41 MPa', reason: 'last digit' } }) },
  { name: 'judgeLikenessAction', run: judgeLikeness, may: ['inspector'], input: ({ names }) => ({ stream: 'repair:R-1', body: { photo: names.photo, other: names.otherPhoto, decision: 'different pictures', reason: 'two boards' } }) },
  { name: 'openRepairAction', run: openRepair, may: ['lead', 'inspector'], input: () => ({ stream: 'repair:R-9', body: openedFact('R-9').body }) },
  { name: 'holdRepairAction', run: holdRepair, may: ['lead', 'inspector'], input: () => ({ stream: 'repair:R-2', body: { state: 'on hold', reason: 'gas alarm' } }) },
  { name: 'acceptRepairAction', run: acceptRepair, may: ['inspector'], input: async ({ heads }, actor) => ({ stream: 'repair:R-1', body: { kind: 'accepted', lifeYears: decimal('10'), lifeFrom: '2026-05-12', nextInspectionOn: '2027-05-12', restrictions: [], conditions: [], heads: await heads() }, signer: self(actor) }) },
  { name: 'dischargeConditionAction', run: dischargeCondition, may: ['inspector'], input: ({ names }) => ({ stream: 'repair:R-2', body: { acceptance: names.acceptance, condition: 0, evidence: 'painted' } }) },
  { name: 'reviseLifeAction', run: reviseLife, may: ['engineer'], input: () => ({ stream: 'repair:R-2', body: { lifeYears: decimal('4'), nextInspectionOn: '2026-12-01', reason: 'wall loss goes on' } }) },
  { name: 'decideImpactAction', run: decideImpact, may: ['inspector'], input: ({ names }) => ({ stream: 'repair:R-1', body: { cause: names.record, points: [], decision: 'no effect', evidence: [], reason: 'not in use that day' } }) },
  { name: 'decideStandsOrRedoAction', run: decideStandsOrRedo, may: ['engineer'], input: () => ({ stream: 'repair:R-1', body: { point: '05', revision: 1, of: 'specification:S-1', decision: 'stands', reason: 'not touched' } }) },
  { name: 'sendNoticeAction', run: sendNotice, may: ['lead', 'inspector'], input: () => ({ stream: 'repair:R-1', body: { point: '06', to: 'K', party: 'client', how: 'telephone', sentAt: '2026-05-11T07:50:00+01:00', for: '2026-05-12T10:00:00+01:00' } }) },
  { name: 'answerNoticeAction', run: answerNotice, may: ['lead', 'inspector'], input: ({ names }) => ({ stream: 'repair:R-1', body: { notice: names.notice, outcome: 'attended' } }) },
  { name: 'waiveHoldAction', run: waiveHold, may: ['client'], input: (_world, actor) => ({ stream: 'repair:R-1', body: { point: '06', attempt: 1, party: 'client', by: actor.person, writing: 'letter of 05-11' } }) },
  { name: 'raiseQueryAction', run: raiseQuery, may: ['technician', 'lead', 'inspector', 'client'], input: () => ({ stream: 'repair:R-1', body: { number: 'TQ-2', question: 'May it be shorter?' } }) },
  { name: 'answerQueryAction', run: answerQuery, may: ['engineer'], input: ({ names }) => ({ stream: 'repair:R-1', body: { query: names.query, answer: 'No.', binding: true } }) },
  { name: 'raiseNonconformanceAction', run: raiseNonconformance, may: ['technician', 'lead', 'inspector', 'client', 'engineer', 'stores', 'auditor', 'in-service inspector'], input: () => ({ stream: 'nonconformance:N-new', body: { number: 'N-new', title: 'Cold', what: 'Cold probe', requirement: '9.1', repair: 'repair:R-1', linked: [], evidence: [], blocks: [], causeClass: 'weather' } }) },
  { name: 'containNonconformanceAction', run: containNonconformance, may: ['lead', 'inspector', 'engineer', 'stores'], input: () => ({ stream: 'nonconformance:N-contain', body: { action: 'held' } }) },
  { name: 'assessNonconformanceAction', run: assessNonconformance, may: ['inspector', 'engineer'], input: () => ({ stream: 'nonconformance:N-raised', body: { finding: 'cold' } }) },
  { name: 'proposeDispositionAction', run: proposeDisposition, may: ['lead', 'inspector'], input: () => ({ stream: 'nonconformance:N-assessed', body: { disposition: 'rework', what: 'again' } }) },
  { name: 'approveDispositionAction', run: approveDisposition, may: ['inspector'], input: ({ names }) => ({ stream: 'nonconformance:N-proposed', body: { proposal: names.proposal, party: 'inspector' } }) },
  { name: 'rejectDispositionAction', run: rejectDisposition, may: ['inspector', 'client', 'engineer'], input: ({ names }) => ({ stream: 'nonconformance:N-turned', body: { proposal: names.proposal, reason: 'not enough' } }) },
  { name: 'startActionAction', run: startAction, may: ['technician', 'lead', 'inspector', 'engineer', 'stores'], input: () => ({ stream: 'nonconformance:N-approved', body: { what: 'again' } }) },
  { name: 'finishActionAction', run: finishAction, may: ['technician', 'lead', 'inspector', 'engineer', 'stores'], input: () => ({ stream: 'nonconformance:N-started', body: { what: 'again' } }) },
  { name: 'verifyNonconformanceAction', run: verifyNonconformance, may: ['inspector'], input: () => ({ stream: 'nonconformance:N-done', body: { how: 'seen', evidence: [] } }) },
  { name: 'closeNonconformanceAction', run: closeNonconformance, may: ['inspector'], input: () => ({ stream: 'nonconformance:N-verified', body: {} }) },
  { name: 'reopenNonconformanceAction', run: reopenNonconformance, may: ['inspector', 'client', 'engineer'], input: () => ({ stream: 'nonconformance:N-reopen', body: { reason: 'seen again' } }) },
  { name: 'rejectNonconformanceAction', run: rejectNonconformance, may: ['inspector'], input: () => ({ stream: 'nonconformance:N-reject', body: { reason: 'within the limits' } }) },
  { name: 'voidDuplicateAction', run: voidDuplicate, may: ['inspector'], input: () => ({ stream: 'nonconformance:N-void', body: { of: 'nonconformance:N-raised', reason: 'the same' } }) },
  { name: 'agreeDoesNotBlockAction', run: agreeDoesNotBlock, may: ['engineer'], input: () => ({ stream: 'nonconformance:N-action', body: { party: 'engineer', reason: 'paint only' } }) },
  { name: 'nameCorrectiveActionAction', run: nameCorrectiveAction, may: ['inspector', 'engineer'], input: () => ({ stream: 'nonconformance:N-action', body: { what: 'second probe', owner: 'E', dueOn: '2026-05-29' } }) },
  { name: 'finishCorrectiveActionAction', run: finishCorrectiveAction, may: ['lead', 'inspector', 'engineer', 'stores'], input: ({ names }) => ({ stream: 'nonconformance:N-action', body: { action: names.action, evidence: 'revision 4' } }) },
  { name: 'receiveBatchAction', run: receiveBatch, may: ['stores'], input: () => ({ stream: 'batch:NEW-1', body: { number: 'NEW-1', role: 'filler', product: 'Filler', expiresOn: null, quantity: null } }) },
  { name: 'openBatchAction', run: openBatch, may: ['stores'], input: () => ({ stream: 'batch:FP-1', body: { openedAt: '2026-05-12T08:00:00+01:00' } }) },
  { name: 'issueBatchAction', run: issueBatch, may: ['stores'], input: () => ({ stream: 'batch:FP-1', body: { quantity: { kind: 'number', digits: 1, scale: 0, unit: 'kits', text: '1' }, to: 'repair:R-1' } }) },
  { name: 'returnBatchAction', run: returnBatch, may: ['stores'], input: () => ({ stream: 'batch:FP-1', body: { quantity: { kind: 'number', digits: 1, scale: 0, unit: 'kits', text: '1' }, from: 'repair:R-1' } }) },
  { name: 'wasteBatchAction', run: wasteBatch, may: ['stores'], input: () => ({ stream: 'batch:FP-1', body: { quantity: { kind: 'number', digits: 1, scale: 0, unit: 'kits', text: '1' }, reason: 'left to harden' } }) },
  { name: 'countBatchAction', run: countBatch, may: ['stores'], input: () => ({ stream: 'batch:FP-1', body: { quantity: { kind: 'number', digits: 1, scale: 0, unit: 'kits', text: '1' } } }) },
  { name: 'recordMakerLetterAction', run: recordMakerLetter, may: ['stores'], input: () => ({ stream: 'batch:FP-1', body: { letter: 'L-1', expiresOn: '2026-12-31' } }) },
  { name: 'refuseBatchAction', run: refuseBatch, may: ['lead', 'inspector', 'stores'], input: () => ({ stream: 'batch:FP-1', body: { reason: 'label torn' } }) },
  { name: 'quarantineBatchAction', run: quarantineBatch, may: ['lead', 'inspector', 'stores'], input: () => ({ stream: 'batch:FP-1', body: { reason: 'label torn' } }) },
  { name: 'recallBatchAction', run: recallBatch, may: ['inspector', 'stores'], input: () => ({ stream: 'batch:FP-1', body: { reason: 'maker’s letter', by: 'the maker' } }) },
  { name: 'notifyOwnerAction', run: notifyOwner, may: ['inspector', 'stores'], input: ({ names }) => ({ stream: 'batch:FP-1', body: { cause: names.record, to: 'Quellmark', how: 'letter' } }) },
  { name: 'liftQuarantineAction', run: liftQuarantine, may: ['inspector', 'engineer'], input: (_world, actor) => ({ stream: 'batch:FP-2', reason: 'label found', second: { by: 'password', person: actor.person === 'QI' ? 'QJ' : 'QI', password: PASSWORD } }) },
  { name: 'registerInstrumentAction', run: registerInstrument, may: ['lead', 'inspector', 'stores'], input: () => ({ stream: 'instrument:NEW-1', body: { number: 'NEW-1', kind: 'durometer', measures: ['ShoreD'] } }) },
  { name: 'recordCertificateAction', run: recordCertificate, may: ['lead', 'inspector', 'stores'], input: () => ({ stream: 'instrument:HD-1', body: { certificate: 'C-1', dueOn: '2027-01-01' } }) },
  { name: 'checkInstrumentAction', run: checkInstrument, may: ['technician', 'lead', 'inspector'], input: () => ({ stream: 'instrument:HD-1', body: { coverage: 'full scale', reference: { kind: 'number', digits: 60, scale: 0, unit: 'ShoreD', text: '60' }, read: { kind: 'number', digits: 60, scale: 0, unit: 'ShoreD', text: '60' }, tolerance: { kind: 'number', digits: 60, scale: 0, unit: 'ShoreD', text: '60' }, result: 'within' } }) },
  { name: 'findInstrumentWrongAction', run: findInstrumentWrong, may: ['inspector'], input: () => ({ stream: 'instrument:HD-1', body: { how: 'reads high at the upper end' } }) },
  { name: 'quarantineInstrumentAction', run: quarantineInstrument, may: ['lead', 'inspector', 'stores'], input: () => ({ stream: 'instrument:HD-1', body: { reason: 'dropped' } }) },
  { name: 'registerPersonAction', run: registerPerson, may: ['administrator'], input: () => ({ stream: 'person:NEW-1', body: { name: 'New One', party: 'crew', title: 'applicator' } }) },
  { name: 'renamePersonAction', run: renamePerson, may: ['administrator'], input: () => ({ stream: 'person:NEW', body: { name: 'New Name', reason: 'married' } }) },
  { name: 'endPersonAction', run: endPerson, may: ['administrator'], input: () => ({ stream: 'person:NEW', body: { on: '2026-12-31' } }) },
  { name: 'recordQualificationAction', run: recordQualification, may: ['lead', 'inspector'], input: () => ({ stream: 'person:NEW', body: { number: 'Q-9', task: 'applicator', validTo: '2027-01-01' } }) },
  { name: 'invitePersonAction', run: invitePerson, may: ['administrator'], input: () => ({ person: 'NEW', email: 'new@example.test' }) },
  { name: 'saveSpecificationDraftAction', run: saveSpecificationDraft, may: ['inspector', 'engineer'], input: () => ({ stream: 'specification:S-2', body: { body: SPECIFICATION } }) },
  { name: 'savePlanDraftAction', run: savePlanDraft, may: ['inspector', 'engineer'], input: () => ({ stream: 'plan:ITP-2', body: { body: PLAN } }) },
  { name: 'issueSpecificationAction', run: issueSpecification, may: ['client', 'engineer'], input: () => ({ stream: 'specification:S-2', changes: 'first issue' }) },
  { name: 'issuePlanAction', run: issuePlan, may: ['client', 'engineer'], input: () => ({ stream: 'plan:ITP-2', changes: 'first issue' }) },
  { name: 'openProjectAction', run: openProject, may: ['administrator'], input: () => ({ stream: 'project:P-9', body: { name: 'New', site: 'Here', utcOffset: '+01:00', owner: 'Quellmark' } }) },
  { name: 'namePartyAction', run: nameParty, may: ['administrator'], input: () => ({ stream: 'project:P-1', body: { party: 'crew', name: 'Wherryfold' } }) },
  { name: 'grantRoleAction', run: grantRole, may: ['administrator'], input: () => ({ stream: 'project:P-1', body: { person: 'NEW', role: 'lead', from: '2026-05-12' } }) },
  { name: 'endRoleAction', run: endRole, may: ['administrator'], input: ({ names }) => ({ stream: 'project:P-1', body: { grant: names.grant, on: '2026-12-31', reason: 'end of the job' } }) },
  { name: 'registerDeviceAction', run: registerDevice, may: ['technician', 'lead', 'inspector', 'client', 'engineer', 'stores', 'in-service inspector', 'auditor', 'administrator'], input: () => ({ stream: 'device:NEW-1', body: { title: 'Tablet' } }) },
  { name: 'checkClockAction', run: checkClock, may: ['technician', 'lead', 'inspector', 'client', 'engineer', 'stores', 'in-service inspector', 'auditor', 'administrator'], input: () => ({ stream: 'device:tab-1', body: { offsetMs: 1000 } }) },
  { name: 'issueDossierAction', run: issueDossier, may: ['inspector'], input: () => ({ stream: 'repair:R-1', purpose: 'for test', changes: ['first'] }) },
  { name: 'recordTransmittalAction', run: recordTransmittal, may: ['inspector'], input: ({ names }) => ({ stream: 'dossier:R-1', body: { issue: names.issue, to: 'Quellmark', how: 'by hand', at: '2026-05-12T09:00:00+01:00' } }) },
]
