'use client'
import { zodResolver } from '@hookform/resolvers/zod'
import { useMemo, useState } from 'react'
import { type FieldValues, useForm } from 'react-hook-form'
import type { z } from 'zod'
import { keepOpening } from '@/app/_capture/keep-opening'
import { OutboxRefusal } from '@/app/_parts/outbox-refusal'
import { openingOf, RepairFields, RepairFieldsForm } from '@/app/_parts/repair-fields'
import { RoomNote } from '@/app/_parts/room-note'
import { siteHref } from '@/lib/capture/site/site-address'
import type { ProjectPack } from '@/lib/domain/capture/project-pack'
import { repairGroundsOf } from '@/lib/domain/capture/repair-grounds'
import { goTo } from './use-place'
import type { Site } from './use-site'

/** Open a repair where there is no network, under a number of this device's own. The number is shown large before anything is keyed: it goes on the pipe in chalk. */
export function SiteOpen({ site, project }: { site: Site; project: ProjectPack }) {
  const left = site.numbersOf(project)
  // as when the form was opened: another window may use up numbers, the chalk on the pipe does not follow
  const [number, setNumber] = useState<string | null>(left[0] ?? null)
  const [refusal, setRefusal] = useState<{ code: string; [fact: string]: unknown } | null>(null)
  const grounds = useMemo(() => repairGroundsOf(project.facts), [project])
  const form = useForm<FieldValues>({
    resolver: zodResolver(RepairFieldsForm as never) as never,
    defaultValues: { clockView: 'looking downstream' },
    mode: 'onTouched',
  })
  const save = form.handleSubmit(async (values) => {
    if (number === null) return
    const body = openingOf(values as z.infer<typeof RepairFieldsForm>, { number, project: project.project }, grounds)
    const kept = body.ok ? await keepOpening(site.page, project, body.value) : body
    if (!kept.ok) return setRefusal(kept.error)
    goTo(siteHref({ repair: number }))
  })
  return (
    <main className="page narrow" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">
            <a href={siteHref({})}>‹ On this device</a> · {project.title}
          </p>
          <h1>Open a repair here</h1>
        </div>
      </div>
      <div className="stack">
        <RoomNote room={site.room} isBrief />
        {number === null ? (
          <div className="note warn">
            <strong>This device has no number left in this project.</strong>
            <span>Take numbers along where there is a network. Do not chalk a number that is not this device’s.</span>
          </div>
        ) : (
          <section className="sheet chalk-number" aria-label="Number of the repair">
            <p className="quiet">Chalk this number on the pipe. It is this device’s alone and is never changed.</p>
            <output className="chalked">{number}</output>
            <label className="field">
              <span className="label">Another number of this device</span>
              <select value={number} onChange={(event) => setNumber(event.target.value)}>
                {[...new Set([number, ...left])].map((one) => (
                  <option key={one} value={one}>
                    {one}
                  </option>
                ))}
              </select>
            </label>
            <p className="quiet small">{left.length} left on this device.</p>
          </section>
        )}
        {number === null ? null : (
          <form className="form" noValidate onSubmit={save}>
            <RepairFields control={form.control} grounds={grounds} />
            {refusal ? <OutboxRefusal refusal={refusal} /> : null}
            <button type="submit" className="button" disabled={form.formState.isSubmitting}>
              Open repair {number} on this device
            </button>
          </form>
        )}
      </div>
    </main>
  )
}
