import { fillCleanliness } from './fill-cleanliness'
import { fillMix } from './fill-mix'
import { FILLER_AFTER, FILLER_BEFORE, FILLER_HARDNESS, FILLER_MIX, PROFILE } from './repair-0042'
import { L1, QI, T1, type Walk } from './walk'

/** Points 05 to 07: surface and climate. */
export async function surface(walk: Walk): Promise<void> {
  walk.at('08:41')
  const clean = await walk.form('05', 'cleanliness')
  await clean.time('Preparation finished', walk.day, '08:30')
  await clean.stamp('Checked')
  await fillCleanliness(clean)
  await clean.save()
  await walk.close(
    '05',
    [
      [L1, 'checked'],
      [QI, 'measured'],
    ],
    [
      [L1, 'crew'],
      [QI, 'inspector'],
    ],
  )
  walk.at('08:52')
  const profile = await walk.form('06', 'profile')
  await profile.stamp('Taken')
  await profile.choose('Method', 'stylus')
  await profile.pick('Gauge', 'SP-07')
  await profile.marks('Profile at the marks', PROFILE)
  await profile.save()
  await walk.close(
    '06',
    [[QI, 'measured']],
    [
      [L1, 'crew'],
      [QI, 'inspector'],
    ],
  )
  walk.at('09:00')
  await climate(walk, '07', '15.9', '78', '15.3')
  await walk.close(
    '07',
    [
      [L1, 'measured'],
      [QI, 'reviewed'],
    ],
    [[L1, 'crew']],
  )
}

/** A climate record with the coldest spot at 6 o'clock. */
export async function climate(walk: Walk, point: string, air: string, humidity: string, steel: string): Promise<void> {
  const form = await walk.form(point, 'climate')
  await form.stamp('Taken')
  await form.pick('Hygrometer', 'TH-11')
  await form.key('Air', air)
  await form.key('Relative humidity', humidity)
  await form.pick('Steel thermometer', 'ST-04')
  await form.pick('Clock position', '6 o’clock')
  await form.key('Steel', steel)
  await form.save()
}

/** Points 08 to 12: arrest, watch, filler. */
export async function arrestAndFill(walk: Walk): Promise<void> {
  walk.at('09:10')
  const arrest = await walk.form('08', 'arrest')
  await arrest.choose('Kind of arrest', 'tapered plug')
  await arrest.stamp('Placed')
  await arrest.key('Pressure then', '0.40')
  await arrest.choose('Left inside the repair', 'yes')
  await arrest.pick('Placed by', 'Dorrit Akande')
  await arrest.save()
  await walk.close('08', [[L1, 'checked']], [[L1, 'crew']])
  walk.at('09:16')
  const watch = await walk.form('09', 'arrest-watch')
  await watch.stamp('Watch started')
  await watch.key('Pressure during the watch', '0.40')
  await watch.pick('Watched by', 'Tobias Wrenfield')
  walk.at('09:38')
  await watch.stamp('Watch ended')
  await watch.choose('White wipe dry', 'yes')
  await watch.choose('Free of flash rust', 'yes')
  await watch.save()
  await walk.close(
    '09',
    [[QI, 'measured']],
    [
      [L1, 'crew'],
      [QI, 'inspector'],
    ],
  )
  walk.at('09:46')
  const mix = await walk.form('10', 'filler-mix')
  await fillMix(mix, 'F1', { A: ['FP-121', FILLER_MIX[0]], B: ['FP-121', FILLER_MIX[1]] })
  await mix.pick('Checked by', 'Maren Osterfalk')
  await mix.pick('Scale', 'WB-09')
  await mix.stamp('Mixing started')
  await mix.choose('Colour uniform', 'yes')
  await mix.save()
  await walk.close(
    '10',
    [
      [T1, 'performed'],
      [L1, 'checked'],
    ],
    [[L1, 'crew']],
  )
  walk.at('11:02')
  const thickness = await walk.form('11', 'filler-thickness')
  await thickness.key('Mix', 'F1')
  await thickness.time('Placed', walk.day, '09:55')
  await thickness.pick('Placed by', 'Dorrit Akande')
  await thickness.pick('Depth gauge', 'LG-06')
  await thickness.marks('Height before, mm', FILLER_BEFORE)
  await thickness.marks('Height after, mm', FILLER_AFTER)
  await thickness.key('Mark over the hole', '0@6')
  await thickness.stamp('Measured')
  await thickness.choose('Smooth, no step', 'yes')
  await thickness.save()
  await walk.close(
    '11',
    [[QI, 'measured']],
    [
      [L1, 'crew'],
      [QI, 'inspector'],
    ],
  )
  walk.at('11:06')
  const cure = await walk.form('12', 'filler-cure')
  await cure.stamp('Taken')
  await cure.pick('Durometer', 'HD-03')
  await cure.marks('Hardness on the filler', FILLER_HARDNESS)
  await cure.choose('No weep', 'yes')
  await cure.save()
  await walk.close(
    '12',
    [[QI, 'measured']],
    [
      [L1, 'crew'],
      [QI, 'inspector'],
    ],
  )
}
