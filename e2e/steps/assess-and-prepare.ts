import { fillPermit } from './fill-permit'
import { signInAs } from './people'
import { CLOCKS, STATIONS, WALL } from './repair-0042'
import { E, L1, QI, S, type Walk } from './walk'

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

/** Point 02: the permit, checked and released by the crew. */
export async function permit(walk: Walk): Promise<void> {
  walk.at('07:50')
  const form = await walk.form('02', 'permit')
  await fillPermit(form, { permit: 'PTW-2-0431', from: [walk.day, '07:00'], to: ['05-22', '18:00'], pressure: '0.40' })
  await form.save()
  await walk.close('02', [[L1, 'checked']], [[L1, 'crew']])
}

/** Points 02 to 04: permit, materials, instruments and persons. */
export async function prepare(walk: Walk): Promise<void> {
  await permit(walk)
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
