import { showMoment } from '@/lib/domain/time'
import type { TraceBatchView } from '@/lib/server/views/trace-batch-view'

/** A batch trace as plain lines: the batch, its balance, every use, every repair with what was decided, every movement. */
export function showTrace(view: TraceBatchView): string {
  const { balance } = view
  return [
    `${view.number}  ${view.product} (${view.role}), expires ${view.expiresOn ?? 'never'}, received ${view.received ?? 'amount not stated'}, certificate ${view.certificate ?? 'none'}`,
    ...(view.recall ? [`RECALLED ${showMoment(view.recall.at)} by ${view.recall.by}: ${view.recall.reason}`] : []),
    balance
      ? `balance in ${balance.unit}: received ${balance.received}, used ${balance.used}, wasted ${balance.wasted}, returned ${balance.returned}, in store ${balance.inStore ?? 'not counted'}, gap ${balance.gap}${balance.isFinding ? ' (a finding)' : ''}`
      : 'balance: received without an amount',
    '',
    'Uses',
    ...linesOr(
      view.uses.map((use) => [
        showMoment(use.at),
        use.number,
        `point ${use.point} attempt ${use.attempt}`,
        use.role,
        use.into ?? '',
        use.amount ?? '',
        use.isInQuestion ? 'in question' : (use.verdict ?? ''),
      ]),
    ),
    '',
    'Repairs',
    ...linesOr(
      view.repairs.map((one) => [
        one.number,
        one.line,
        one.status,
        `attempts ${one.attempts.join(', ')}`,
        one.isInQuestion ? 'in question' : '',
        one.receivers.length > 0 ? `dossier went to ${one.receivers.map((to) => to.to).join(', ')}` : '',
        ...one.decisions.map((decision) => `${decision.decision}: ${decision.reason} (${decision.by})`),
      ]),
    ),
    '',
    'Movements',
    ...linesOr(
      view.movements.map((event) => [
        showMoment(event.at),
        event.title,
        event.detail,
        event.by,
        event.late ? `late, ${event.late}` : '',
      ]),
    ),
  ].join('\n')
}

function linesOr(rows: readonly (readonly string[])[]): string[] {
  return rows.length > 0 ? rows.map((row) => `  ${row.filter((cell) => cell !== '').join('  ')}`) : ['  none']
}
