import { showUnit, Unit } from '@/lib/domain/reading'
import type { MassBalance } from '@/lib/domain/trace/trace-batch'

/** Received, used, wasted, in store, and the gap: a gap is a finding; not counted is not a gap. */
export function BalanceStrip({ balance, received }: { balance: MassBalance | null; received: string | null }) {
  if (!balance)
    return (
      <p className="quiet">
        The amount received was not stated{received ? ` (${received})` : ''}: nothing can be balanced.
      </p>
    )
  const unit = Unit.safeParse(balance.unit)
  const word = unit.success ? showUnit(unit.data) : balance.unit
  const otherUnit = new Set(balance.unweighed).size
  const isNumber = balance.gap !== 'not counted' && balance.gap !== 'not weighed'
  return (
    <>
      <dl className="balance">
        <div>
          <dt>Received</dt>
          <dd>
            {balance.received} {word}
          </dd>
        </div>
        <div>
          <dt>Used</dt>
          <dd>
            {balance.used} {word}
            {otherUnit > 0 ? (
              <span className="quiet small">
                {' '}
                and {otherUnit} not in {word}
              </span>
            ) : null}
          </dd>
        </div>
        <div>
          <dt>Wasted</dt>
          <dd>
            {balance.wasted} {word}
          </dd>
        </div>
        <div>
          <dt>Returned</dt>
          <dd>
            {balance.returned} {word}
          </dd>
        </div>
        <div>
          <dt>In store</dt>
          <dd>{balance.inStore === null ? 'not counted' : `${balance.inStore} ${word}`}</dd>
        </div>
        <div className={balance.isFinding ? 'gap' : ''}>
          <dt>Gap</dt>
          <dd>{isNumber ? `${balance.gap} ${word}` : balance.gap}</dd>
        </div>
      </dl>
      {balance.isFinding ? (
        <p className="note refused" style={{ marginTop: 12 }}>
          <strong>
            Finding:{' '}
            {isNumber
              ? `${balance.gap} ${word} are not accounted for.`
              : 'a use was not weighed in this unit, so the balance cannot close.'}
          </strong>{' '}
          <span>Count again, or find the use that was not recorded.</span>
        </p>
      ) : null}
      {!balance.isFinding && balance.gap === 'not counted' ? (
        <p className="quiet small" style={{ marginTop: 10 }}>
          Nobody counted the store: the balance is open, which is not a gap.
          {balance.unweighed.length > 0
            ? ` ${balance.unweighed.length} use${balance.unweighed.length === 1 ? ' has' : 's have'} no amount in ${word}.`
            : ''}
        </p>
      ) : null}
    </>
  )
}
