import { signInAs } from './people'
import { CLOCKS, FILLER_AFTER, FILLER_BEFORE, FILLER_HARDNESS, PROFILE, SALTS, STATIONS, WALL } from './repair-0042'
import { E, L1, QI, S, T1, type Walk } from './walk'

/** Point 01: as found by the inspector, designed by the engineer, released for both. */
export async function assess(walk: Walk): Promise<void> {
  walk.at('07:40')
  const defect = await walk.form('01', 'defect')
  await defect.choose('Kind of defect', 'through-wall')
  for (const [label, text] of [
    ['Hole along the pipe', '7'],
    ['Hole round the pipe', '5'],
    ['Length of the defect along the pipe', '85'],
    ['Outside diameter by tape 1', '219.1'],
    ['Nominal wall', '8.2'],
    ['Material of the pipe', 'carbon steel'],
    ['Medium', 'mine water'],
    ['Operating pressure', '0.85'],
    ['Design pressure', '1.10'],
    ['Highest temperature', '24'],
    ['Life wanted', '10'],
  ] as const)
    await defect.key(label, text)
  await defect.pick('Clock position of the leak', '6 o’clock')
  await defect.key('Stations, mm from the leak, upstream first', STATIONS)
  await defect.key('Clock positions', CLOCKS)
  await defect.pick('Wall gauge', 'UT-02')
  await defect.marks('Wall at the marks', WALL)
  await defect.choose('Cause', 'internal corrosion')
  await defect.save()
  await signInAs(walk.page, E)
  const design = await walk.form('01', 'design')
  for (const [label, text] of [
    ['Design sheet', 'DS-0142'],
    ['Revision of the sheet', '0'],
    ['Outside diameter in the design', '219.1'],
    ['Wall in the design', '8.2'],
    ['Design pressure', '1.10'],
    ['Design temperature', '24'],
    ['Plies', '9'],
    ['Least laminate thickness', '5.5'],
    ['Overlap each side of the defect', '90'],
    ['Taper each end', '30'],
    ['Total length', '325'],
    ['Test pressure', '1.210'],
    ['Life', '10'],
  ] as const)
    await design.key(label, text)
  const envelope = design.within('As found, the design holds for')
  for (const [label, text] of [
    ['Hole along the pipe, at most', '9'],
    ['Hole round the pipe, at most', '9'],
    ['Wall at the ends of the band, at least', '4.5'],
    ['Outside diameter, at least', '217.0'],
    ['Outside diameter, at most', '222.0'],
  ] as const)
    await envelope.key(label, text)
  await design.save()
  await signInAs(walk.page, QI)
  await walk.close(
    '01',
    [
      [E, 'approved'],
      [QI, 'measured'],
    ],
    [
      [QI, 'inspector'],
      [E, 'engineer'],
    ],
  )
}

/** Points 02 to 04: permit, materials, instruments and persons. */
export async function prepare(walk: Walk): Promise<void> {
  walk.at('07:50')
  const permit = await walk.form('02', 'permit')
  await permit.key('Permit', 'PTW-2-0431')
  await permit.time('Valid from', walk.day, '07:00')
  await permit.time('Valid to', '05-22', '18:00')
  for (const [label, text] of [
    ['Area authority, by name', 'Shaft 2 control'],
    ['Pressure at start', '0.40'],
  ] as const)
    await permit.key(label, text)
  await permit.choose('State of the line', 'live')
  await permit.choose('Spark-restricted area', 'no')
  await permit.save()
  await walk.close('02', [[L1, 'checked']], [[L1, 'crew']])
  walk.at('08:00')
  const materials = await walk.form('03', 'materials')
  const batches = [
    ['resin', 'RS-884'],
    ['hardener', 'HB-2291'],
    ['filler', 'FP-121'],
    ['primer', 'PR-357'],
    ['fabric', 'FB-0616'],
  ] as const
  for (const [place, [role, batch]] of batches.entries()) {
    if (place > 0) await materials.add('Add a package')
    const line = materials.within(`Package ${place + 1}`)
    await line.choose('What it is', role)
    await line.pick('Batch', batch)
    await line.choose('Package', 'sound')
    await line.choose('Certificate matches the batch', 'yes')
    await line.choose('Belongs to the qualified system', 'yes')
    await line.choose('Decision', 'taken')
  }
  await materials.save()
  await walk.close(
    '03',
    [
      [S, 'performed'],
      [QI, 'witnessed'],
    ],
    [[L1, 'crew']],
  )
  walk.at('08:15')
  const checks = await walk.form('04', 'instruments')
  for (const [place, [instrument, certificate]] of (
    [
      ['SP-07', 'C-3310'],
      ['TH-11', 'C-3188'],
      ['ST-04', 'C-3377'],
      ['HD-03', 'C-3291'],
    ] as const
  ).entries()) {
    await checks.add('Add an instrument')
    const line = checks.within(`Instrument ${place + 1}`)
    await line.pick('Instrument', instrument)
    await line.key('Certificate shown', certificate)
    await line.choose('Checked on a reference piece', 'full scale')
    await line.choose('Check made', 'before')
    await line.choose('Decision', 'taken')
  }
  for (const [place, [person, qualification, task]] of (
    [
      ['Dorrit Akande', 'Q-118', 'applicator'],
      ['Maren Osterfalk', 'Q-064', 'supervisor'],
      ['Tobias Wrenfield', 'I-022', 'inspector'],
    ] as const
  ).entries()) {
    await checks.add('Add a person')
    const line = checks.within(`Person ${place + 1}`)
    await line.pick('Person', person)
    await line.key('Qualification shown', qualification)
    await line.choose('Task', task)
  }
  await checks.save()
  await walk.close(
    '04',
    [[QI, 'checked']],
    [
      [L1, 'crew'],
      [QI, 'inspector'],
    ],
  )
}

/** Points 05 to 07: surface and climate. */
export async function surface(walk: Walk): Promise<void> {
  walk.at('08:41')
  const clean = await walk.form('05', 'cleanliness')
  await clean.time('Preparation finished', walk.day, '08:30')
  await clean.stamp('Checked')
  await clean.choose('Prepared by', 'blast')
  await clean.choose('Grade by the pictures', 'Sa 2 1/2')
  await clean.key('Dust class', '2')
  await clean.thumb('Soluble salts', SALTS)
  await clean.pick('Salt meter', 'SM-02')
  await clean.choose('Free of oil, water does not break', 'yes')
  await clean.key('Prepared, upstream of the leak', '190')
  await clean.key('Prepared, downstream of the leak', '190')
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
  await mix.key('Mix', 'F1')
  await mix.pick('Mixed by', 'Dorrit Akande')
  await mix.pick('Checked by', 'Maren Osterfalk')
  await mix.choose('Proportioned', 'by mass')
  await mix.within('Part A 1').pick('Batch', 'FP-121')
  await mix.within('Part A 1').key('Amount', '640')
  await mix.add('Add a batch of part B')
  await mix.within('Part B 1').pick('Batch', 'FP-121')
  await mix.within('Part B 1').key('Amount', '244')
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
