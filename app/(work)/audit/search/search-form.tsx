import type { ReactNode } from 'react'
import { kindWords } from '@/lib/domain/facts/fact-words'
import { RECORD_TYPES } from '@/lib/domain/records/record'
import { RECORD_TITLES } from '@/lib/domain/records/record-titles'
import type { SearchFault, SearchOptions, SearchParams } from '@/lib/server/views/audit-search-view'
import { kindsByStream } from '@/lib/server/views/audit-words'

/** The fields of a search of the trail. It is asked by address, so that a search can be kept and sent. */
export function SearchForm({
  params,
  options,
  faults,
}: {
  params: SearchParams
  options: SearchOptions
  faults: readonly SearchFault[]
}) {
  const field = (name: keyof SearchParams, label: string, control: ReactNode) => {
    const wrong = faults.find((one) => one.field === name)
    return (
      <div className="field">
        <label htmlFor={name}>{label}</label>
        {control}
        {wrong ? <span className="wrong">{wrong.text}</span> : null}
      </div>
    )
  }
  const listed = (name: 'batch' | 'instrument' | 'repair', label: string, names: readonly string[]) =>
    field(
      name,
      label,
      <>
        <input id={name} name={name} list={`${name}-names`} defaultValue={params[name]} autoComplete="off" />
        <datalist id={`${name}-names`}>
          {names.map((one) => (
            <option key={one} value={one} />
          ))}
        </datalist>
      </>,
    )
  return (
    <search>
      <form className="sheet fields no-print" method="get">
        {field(
          'person',
          'Person',
          <select id="person" name="person" defaultValue={params.person ?? ''}>
            <option value="">Anybody</option>
            {options.persons.map((one) => (
              <option key={one.id} value={one.id}>
                {one.name}
              </option>
            ))}
          </select>,
        )}
        {listed('repair', 'Repair', options.repairs)}
        {listed('batch', 'Batch', options.batches)}
        {listed('instrument', 'Instrument', options.instruments)}
        {field('act', 'Act', <ActChoice chosen={params.act ?? ''} />)}
        {field('from', 'From', <input id="from" name="from" type="date" defaultValue={params.from} />)}
        {field('to', 'To', <input id="to" name="to" type="date" defaultValue={params.to} />)}
        {field(
          'basis',
          'Days are of',
          <select id="basis" name="basis" defaultValue={params.basis === 'received' ? 'received' : 'observed'}>
            <option value="observed">what was observed</option>
            <option value="received">what the server received</option>
          </select>,
        )}
        <div className="row search-act">
          <button className="button" type="submit">
            Search
          </button>
        </div>
      </form>
    </search>
  )
}

function ActChoice({ chosen }: { chosen: string }) {
  return (
    <select id="act" name="act" defaultValue={chosen}>
      <option value="">Any</option>
      <optgroup label="record of">
        {RECORD_TYPES.map((type) => (
          <option key={type} value={`recorded/${type}`}>
            {RECORD_TITLES[type] ?? type}
          </option>
        ))}
      </optgroup>
      {kindsByStream().map(({ stream, kinds }) => (
        <optgroup key={stream} label={stream}>
          {kinds.map((kind) => (
            <option key={kind} value={kind}>
              {kindWords(kind)}
            </option>
          ))}
        </optgroup>
      ))}
    </select>
  )
}
