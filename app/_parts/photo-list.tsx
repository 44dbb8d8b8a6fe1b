import { showClaimedTime } from '@/lib/domain/claimed-time'
import type { PersonId } from '@/lib/domain/facts/fact'
import type { AttemptState, PhotoFlag } from '@/lib/domain/fold/repair-state'
import { showMoment } from '@/lib/domain/time'
import { PhotoJudgement } from './photo-judgement'

/** Photos of an attempt with their claims and flags. A claim is what the file says, nothing more. */
export function PhotoList({
  attempt,
  names,
  repair,
  mayJudge,
}: {
  attempt: AttemptState
  names: Record<PersonId, string>
  repair: string
  mayJudge: boolean
}) {
  if (attempt.photos.length === 0) return <p className="quiet">No photo yet.</p>
  return (
    <div className="thumbs">
      {attempt.photos.map(({ fact, judged, flags }) => {
        const { photo, caption } = fact.body
        return (
          <figure key={fact.id}>
            <a href={`/api/photos/${photo.sha256}/rendition`} aria-label={`Open the photo: ${caption}`}>
              {/* Photos are served by our own route, already at their size: the framework's image service has nothing to add. */}
              {/* biome-ignore lint/performance/noImgElement: see above */}
              <img
                src={`/api/photos/${photo.sha256}/thumb`}
                alt={caption}
                loading="lazy"
                width={photo.thumb.widthPx}
                height={photo.thumb.heightPx}
              />
            </a>
            <figcaption>
              <strong>{caption}</strong>
              <span className="quiet">
                {showMoment(fact.observedAt)}, {names[fact.observedBy] ?? fact.observedBy}
              </span>
              <span className="quiet">file says {showClaimedTime(photo.claims) ?? 'no time'}</span>
              <span className="digest">
                SHA-256 {photo.sha256.slice(0, 4)}…{photo.sha256.slice(-4)}
              </span>
              {flags.map((flag) => (
                <span key={`${flag.kind}${flag.other?.fact ?? ''}`} className="not-proven">
                  {flagWords(flag)}
                </span>
              ))}
              {judged ? (
                <span className={judged.body.decision === 'accepted' ? 'pass' : 'fail'}>
                  {judged.body.decision}: {judged.body.reason}
                </span>
              ) : null}
              {mayJudge ? (
                <PhotoJudgement
                  repair={repair}
                  photo={fact.id}
                  isJudged={judged !== null}
                  copies={flags.flatMap((flag) => (flag.other && !flag.decision ? [flag.other.fact] : []))}
                />
              ) : null}
            </figcaption>
          </figure>
        )
      })}
    </div>
  )
}

function flagWords(flag: PhotoFlag): string {
  const where = flag.other ? ` of a photo in ${flag.other.repair.replace('repair:', '')} point ${flag.other.point}` : ''
  const decided = flag.decision ? `: ${flag.decision.body.decision}` : ': a person must judge'
  switch (flag.kind) {
    case 'exact copy':
      return `Exact copy${where}${decided}`
    case 'near copy':
      return `Looks like a copy${where}${decided}`
    case 'no original':
      return 'No original metadata in the file'
    case 'old metadata':
      return 'The file’s own time is old'
    case 'clock differs':
      return 'The file’s own time differs from the entry'
  }
}
