import { STANDING_CAUTION } from '@/lib/domain/caution'
import type { PlanPoint } from '@/lib/domain/plan'
import { TickBoxes, WriteBox } from './write-box'

const LINES = ['1', '2', '3', '4']

/** What follows the forms: remarks, photos, signatures and cautions. */
export function SheetFoot({ plan }: { plan: PlanPoint }) {
  return (
    <>
      <section className="tally-part">
        <h2>Remarks; weep or leak seen; work stopped or resumed</h2>
        <table className="tally-list lines">
          <thead>
            <tr>
              <th>Time</th>
              <th>What</th>
              <th>Place, and in words</th>
            </tr>
          </thead>
          <tbody>
            {LINES.map((no) => (
              <tr key={no}>
                <td>
                  <small>h : min</small>
                </td>
                <td>
                  <small>remark, weep, stopped, resumed</small>
                </td>
                <td />
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <section className="tally-part">
        <h2>Photos that the plan asks for</h2>
        <p className="tally-printed">
          <b>
            Phones, cameras and flash are ignition sources. Carry none into a restricted area unless the permit allows
            that very device.
          </b>{' '}
          A photo can be taken later from a permitted place, or with a camera that the permit allows: write which.
        </p>
        <table className="tally-list photos">
          <thead>
            <tr>
              <th>Shows</th>
              <th>Taken</th>
              <th>Time, camera, picture no.</th>
            </tr>
          </thead>
          <tbody>
            {plan.photos.map((photo) => (
              <tr key={photo.id}>
                <th>
                  {photo.show} <i>at least {photo.atLeast}</i>
                </th>
                <td>
                  <TickBoxes options={['yes', 'not here']} />
                </td>
                <td />
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <section className="tally-part">
        <h2>Signatures on this paper</h2>
        <table className="tally-list signs">
          <thead>
            <tr>
              <th>Meaning, role</th>
              <th>Name in capitals</th>
              <th>Signature</th>
              <th>Date, time</th>
            </tr>
          </thead>
          <tbody>
            {[{ meaning: 'observed and written', role: 'who observed' }, ...plan.signatures].map(
              ({ meaning, role }) => (
                <tr key={`${meaning}${role}`}>
                  <th>
                    {meaning} <i>{role}</i>
                  </th>
                  <td />
                  <td />
                  <td />
                </tr>
              ),
            )}
          </tbody>
        </table>
        <p className="tally-printed">
          In the record each person signs for themselves; what stands here stands on the paper.
        </p>
        <div className="tally-keep">
          <p className="tally-label">Paper given to, as keeper</p>
          <WriteBox />
          <p className="tally-label">Kept at</p>
          <WriteBox />
        </div>
      </section>
      {plan.hazards.map((hazard) => (
        <p key={hazard} className="tally-printed">
          <b>Hazard.</b> {hazard}
        </p>
      ))}
      <p className="tally-printed">
        <b>Caution.</b> {STANDING_CAUTION.replace('this screen', 'this sheet')}
      </p>
    </>
  )
}
