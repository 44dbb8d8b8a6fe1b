import Link from 'next/link'
import { Glyph, type GlyphName } from '@/app/_ui/glyph'
import { StatusMark } from '@/app/_ui/status-mark'
import type { Due, RegisterLine } from '@/lib/server/views/register-view'

const DUE: Record<Due, { glyph: GlyphName; tone: string; word: string } | null> = {
  overdue: { glyph: 'lapsed', tone: 'fail', word: 'Overdue' },
  'life ended': { glyph: 'lapsed', tone: 'fail', word: 'Life ended' },
  due: { glyph: 'lapsed', tone: 'not-proven', word: 'Due' },
  later: null,
  none: null,
}

/** One repair of the register: where it is, what is under it, when due, what was last seen. A concession and a question are never hidden by the state. */
export function RegisterRowView({ line }: { line: RegisterLine }) {
  const due = DUE[line.due]
  return (
    <li className="register-row" data-due={line.due}>
      <div className="register-who">
        <Link className="row-link" href={`/repairs/${line.number}`}>
          <strong>{line.number}</strong>
        </Link>
        <span className="quiet small">
          {line.registerNo ? `register ${line.registerNo}` : 'no register number yet'}
          {line.label ? ` · label ${line.label}` : ''}
        </span>
      </div>
      <div>
        <p>
          <strong>{line.line}</strong> {line.lineTitle}
        </p>
        <p className="small">
          {line.datum} {signed(line.stationFromDatum)} mm
          {line.extent
            ? `, band ${signed(String(Math.round(line.extent.fromMm)))} to ${signed(String(Math.round(line.extent.toMm)))} mm`
            : ''}
          , {line.clock} o’clock {line.clockView}
        </p>
        <p className="small quiet">
          {[
            line.defectKind ?? 'defect not recorded',
            line.cause ?? null,
            line.isCauseActive ? 'cause goes on under the wrap' : null,
            line.className,
          ]
            .filter((one) => one !== null)
            .join(' · ')}
        </p>
      </div>
      <div className="register-state">
        <StatusMark status={line.status} />
        {line.hasConcession ? (
          <p className="mark fail">
            <Glyph name="fail" />
            Concession stands
          </p>
        ) : null}
        {line.inQuestion ? (
          <p className="mark question">
            <Glyph name="question" />
            In question
          </p>
        ) : null}
        {line.openNonconformances.length > 0 ? (
          <p className="small">
            Open:{' '}
            {line.openNonconformances.map((number, place) => (
              <span key={number}>
                {place > 0 ? ', ' : ''}
                <Link href={`/nonconformances/${encodeURIComponent(number)}`}>{number}</Link>
              </span>
            ))}
          </p>
        ) : null}
        <p className="small quiet">
          {line.dossierRevision === null ? 'no dossier issued' : `dossier rev ${line.dossierRevision}`}
          {line.isRevisionDue && line.dossierRevision !== null ? `, rev ${line.dossierRevision + 1} due` : ''}
        </p>
      </div>
      <dl className="register-days">
        <div>
          <dt>Next inspection</dt>
          <dd>
            {due ? (
              <span className={`mark ${due.tone}`}>
                <Glyph name={due.glyph} />
                {due.word}
              </span>
            ) : null}{' '}
            {line.nextInspectionOn ?? 'not set'}
          </dd>
        </div>
        <div>
          <dt>Last inspection</dt>
          <dd>{line.lastInspection ? `${line.lastInspection.on}, ${line.lastInspection.result}` : 'none yet'}</dd>
        </div>
        <div>
          <dt>Life</dt>
          <dd>
            {line.lifeYears ? `${line.lifeYears.replace(/ yr$/, '')} yr` : 'not designed'}
            {line.lifeEndsOn ? `, to ${line.lifeEndsOn}` : ''}
          </dd>
        </div>
        <div>
          <dt>Applied</dt>
          <dd>{line.appliedOn ?? 'not yet'}</dd>
        </div>
        <div>
          <dt>Accepted</dt>
          <dd>{line.acceptedAt?.slice(0, 10) ?? 'not yet'}</dd>
        </div>
      </dl>
      {line.conditions.length > 0 || line.restrictions.length > 0 ? (
        <div className="register-more">
          {line.conditions.map((one) => (
            <p key={one.text} className={`note ${one.isLate ? 'refused' : 'warn'}`}>
              <strong>Condition open{one.isLate ? ', past its day' : ''}:</strong>{' '}
              <span>
                {one.text} ({one.owner}, by {one.dueOn})
              </span>
            </p>
          ))}
          {line.restrictions.length > 0 ? (
            <p className="small">
              <span className="quiet">Restrictions:</span> {line.restrictions.join('; ')}
            </p>
          ) : null}
        </div>
      ) : null}
    </li>
  )
}

function signed(text: string): string {
  return text.startsWith('-') ? `−${text.slice(1)}` : `+${text.replace(/^\+/, '')}`
}
