import { climate } from './before-wrap'
import { fillMix } from './fill-mix'
import { MIXES, PLIES } from './repair-0042'
import { L1, QI, type Walk } from './walk'

/** The record of the re-check at point 13, all as it should be. */
export async function checkBeforeWrap(walk: Walk): Promise<void> {
  const check = await walk.form('13', 'pre-wrap')
  await check.stamp('Checked')
  for (const statement of ['Swept again and wiped', 'Dry', 'Free of flash rust', 'Start and finish stations marked'])
    await check.choose(statement, 'yes')
  await check.save()
}

/** Points 13 and 14: re-check, primer, mixes, plies and their count. */
export async function wrap(walk: Walk): Promise<void> {
  walk.at('11:10')
  await checkBeforeWrap(walk)
  await climate(walk, '13', '16.0', '78', '15.4')
  await walk.close(
    '13',
    [
      [L1, 'checked'],
      [QI, 'checked'],
    ],
    [
      [L1, 'crew'],
      [QI, 'inspector'],
    ],
  )
  walk.at('11:15')
  const primer = await walk.form('14', 'primer')
  await primer.pick('Primer', 'PR-357')
  await primer.stamp('Brushed')
  await primer.pick('Brushed by', 'Dorrit Akande')
  await primer.save()
  for (const [mixNo, started, used, a, b] of MIXES) {
    walk.at('12:00')
    const mix = await walk.form('14', 'resin-mix')
    await fillMix(mix, mixNo, { A: ['RS-884', a], B: ['HB-2291', b] })
    await mix.pick('Scale', 'WB-09')
    await mix.key('Temperature of the mix', '15.8')
    await mix.time('Mixing started', walk.day, started)
    await mix.time('Used up', walk.day, used)
    await mix.save()
  }
  for (const [place, [mixNo, started, ended, overlap, offset]] of PLIES.entries()) {
    const ply = await walk.form('14', 'ply')
    await ply.key('Ply no.', String(place + 1))
    await ply.pick('Fabric', 'FB-0616')
    await ply.key('Mix', mixNo)
    await ply.time('Started', walk.day, started)
    await ply.time('Ended', walk.day, ended)
    await ply.pick('Placed by', 'Dorrit Akande')
    await ply.key('Width', '325')
    await ply.pick('Starts at clock', '12 o’clock')
    await ply.key('Overlap', overlap)
    await ply.key('End joint offset', offset)
    await ply.key('Tension', 'hand, firm')
    await ply.choose('Wet out', 'yes')
    await ply.choose('Air rolled out', 'yes')
    await ply.save()
  }
  for (const person of ['Dorrit Akande', 'Maren Osterfalk']) {
    const count = await walk.form('14', 'ply-count')
    await count.key('Plies counted', '9')
    await count.pick('Counted by', person)
    await count.stamp('Counted')
    await count.save()
  }
  await walk.close(
    '14',
    [
      [L1, 'checked'],
      [QI, 'checked'],
    ],
    [
      [L1, 'crew'],
      [QI, 'inspector'],
    ],
  )
}

/** Point 15: cure by two probes. */
export async function cure(walk: Walk): Promise<void> {
  walk.at('07:00', '05-20')
  const form = await walk.form('15', 'cure')
  await form.time('Started', walk.day, '11:57')
  await form.time('Ended', '05-20', '06:30')
  await form.choose('Post-cure', 'no')
  await form.choose('Interrupted', 'no')
  const probe = form.within('Probe 1')
  await probe.key('Place', 'under the blanket')
  await probe.pick('Clock position', '6 o’clock')
  for (const [place, [day, clock, degrees]] of (
    [
      ['05-19', '11:57', '17.9'],
      ['05-19', '21:00', '17.3'],
      ['05-20', '06:30', '17.1'],
    ] as const
  ).entries()) {
    if (place > 0) await probe.add('Add a temperature')
    const line = probe.within(`Temperature ${place + 1}`)
    await line.time('At', day, clock)
    await line.key('Temperature', degrees)
  }
  await form.pick('Logger', 'CL-08')
  await form.save()
  await walk.close(
    '15',
    [
      [L1, 'measured'],
      [QI, 'reviewed'],
    ],
    [],
  )
}
