import type { QuantitySheet } from '@/lib/domain/design/quantity-sheet'
import { showUnit } from '@/lib/domain/reading'

/** Asks for the values that the record does not state. They go into the address of the page and are kept nowhere. */
export function QuantityAsk({ asked, number }: { asked: QuantitySheet['asked']; number: string }) {
  return (
    <section className="sheet no-print">
      <h2>Not stated on the design sheet</h2>
      <form method="get" action={`/repairs/${encodeURIComponent(number)}/quantities`} className="stack">
        <p className="quiet">
          Type what you know; an empty field stays unknown. The values stay in the address of this page and are recorded
          nowhere.
        </p>
        <div className="fields">
          {asked.map((one) => (
            <div key={one.key} className="field">
              <label htmlFor={`ask-${one.key}`}>{one.label.charAt(0).toUpperCase() + one.label.slice(1)}</label>
              <div className="with-unit">
                <input
                  id={`ask-${one.key}`}
                  name={one.key}
                  defaultValue={one.text}
                  inputMode="decimal"
                  autoComplete="off"
                  aria-invalid={!one.isRead}
                />
                {one.unit ? <span>{showUnit(one.unit)}</span> : null}
              </div>
              {one.isRead ? null : <span className="wrong">“{one.text}” is not a number.</span>}
            </div>
          ))}
        </div>
        <div className="row">
          <button type="submit" className="button">
            Compute
          </button>
        </div>
      </form>
    </section>
  )
}
