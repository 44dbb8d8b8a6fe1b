'use client'
import { useId, useState } from 'react'
import { v7 } from 'uuid'
import { OutboxRefusal } from '@/app/_parts/outbox-refusal'
import { siteHref } from '@/lib/capture/site/site-address'
import { askForNumbers, askNumberGrounds, type NumberGroundsHere } from '@/lib/capture/site/take-project'
import { streamName } from '@/lib/domain/facts/fact'
import { NumberPrefix } from '@/lib/domain/facts/register-bodies'
import { showMoment } from '@/lib/domain/time'
import type { Site } from './use-site'

type Refused = { code: string; [fact: string]: unknown }
const DIGITS = 4

/** Numbers that this device took along to open repairs under where there is no network, and the taking of more. */
export function NumberDesk({ site }: { site: Site }) {
  const [grounds, setGrounds] = useState<NumberGroundsHere | null>(null)
  const [refusal, setRefusal] = useState<Refused | null>(null)
  const ask = async () => {
    const { id } = await site.page.device()
    const asked = await askNumberGrounds(id)
    setGrounds(asked.ok ? asked.value : null)
    setRefusal(asked.ok ? null : asked.error)
  }
  return (
    <section className="sheet" aria-label="Open a repair here">
      <h2>Open a repair here</h2>
      {site.projects.map((project) => {
        const left = site.numbersOf(project)
        return (
          <div key={project.project} className="stack tight number-line">
            <p>
              <strong>{project.title}</strong>
              <br />
              <span className="quiet small">
                {left.length} {left.length === 1 ? 'number' : 'numbers'} left on this device, as of{' '}
                {showMoment(project.takenAt)}
              </span>
            </p>
            {left[0] ? (
              <a className="button" href={siteHref({ open: streamName(project.project) })}>
                Open repair {left[0]}
              </a>
            ) : (
              <p className="note warn">No number is left: take more along where there is a network.</p>
            )}
          </div>
        )
      })}
      {site.projects.length === 0 ? (
        <p className="quiet">
          Take repair numbers along: this device then opens repairs without a network, under numbers that no other
          device uses.
        </p>
      ) : null}
      {grounds ? (
        <TakeNumbers site={site} grounds={grounds} done={() => setGrounds(null)} />
      ) : (
        <button type="button" className="button plain" onClick={() => void ask()}>
          Take numbers along
        </button>
      )}
      {refusal ? <OutboxRefusal refusal={refusal} /> : null}
    </section>
  )
}

function TakeNumbers({ site, grounds, done }: { site: Site; grounds: NumberGroundsHere; done: () => void }) {
  const id = useId()
  // one id for all tries: an answer that was lost is given again, not a second block
  const [request] = useState(() => v7())
  const [project, setProject] = useState(grounds.projects.length === 1 ? (grounds.projects[0]?.project ?? '') : '')
  const [prefix, setPrefix] = useState('')
  const [count, setCount] = useState('10')
  const [refusal, setRefusal] = useState<Refused | null>(null)
  const [isTaking, setTaking] = useState(false)
  const read = NumberPrefix.safeParse(prefix)
  const chosen = grounds.projects.find((one) => one.project === project)
  const take = async (wantsMore: boolean) => {
    setTaking(true)
    const { id: device } = await site.page.device()
    const digits = grounds.prefixes.find((one) => one.prefix.toLowerCase() === prefix.toLowerCase())?.digits ?? DIGITS
    const allotted = wantsMore
      ? await askForNumbers({ id: request, device, project, prefix, digits, count: Number(count) })
      : { ok: true as const }
    const refused = allotted.ok ? await site.takeProject(project) : allotted.error
    setRefusal(refused)
    setTaking(false)
    if (!refused) done()
  }
  return (
    <div className="stack tight">
      <label className="field">
        <span className="label">Project</span>
        <select value={project} onChange={(event) => setProject(event.target.value)}>
          <option value="">choose</option>
          {grounds.projects.map((one) => (
            <option key={one.project} value={one.project}>
              {one.title}
            </option>
          ))}
        </select>
      </label>
      {chosen && chosen.left > 0 ? (
        <button type="button" className="button" disabled={isTaking} onClick={() => void take(false)}>
          Take the {chosen.left} numbers that this device has already
        </button>
      ) : null}
      <label className="field">
        <span className="label">Prefix, before the digits</span>
        <input
          value={prefix}
          list={`${id}prefixes`}
          autoComplete="off"
          onChange={(event) => setPrefix(event.target.value)}
        />
        <datalist id={`${id}prefixes`}>
          {grounds.prefixes.map((one) => (
            <option key={one.prefix} value={one.prefix} />
          ))}
        </datalist>
      </label>
      <div className="row">
        {grounds.prefixes.map((one) => (
          <button key={one.prefix} type="button" className="button plain" onClick={() => setPrefix(one.prefix)}>
            {one.prefix}
          </button>
        ))}
      </div>
      {prefix !== '' && !read.success ? <p className="note warn">{read.error.issues[0]?.message}</p> : null}
      <label className="field">
        <span className="label">How many</span>
        <select value={count} onChange={(event) => setCount(event.target.value)}>
          {['5', '10', '20', '50'].map((one) => (
            <option key={one}>{one}</option>
          ))}
        </select>
      </label>
      <button
        type="button"
        className="button"
        disabled={isTaking || !project || !read.success}
        onClick={() => void take(true)}
      >
        {isTaking ? 'Taking them along' : `Take ${count} numbers along`}
      </button>
      {refusal ? <OutboxRefusal refusal={refusal} /> : null}
    </div>
  )
}
