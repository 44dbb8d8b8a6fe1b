/** Primaries and white of sRGB, adapted to D50 (ICC.1:2001-04, IEC 61966-2-1): X, Y, Z. */
const COLOURS = {
  wtpt: [0.9642, 1, 0.8249],
  rXYZ: [0.4360747, 0.2225045, 0.0139322],
  gXYZ: [0.3850649, 0.7168786, 0.0971045],
  bXYZ: [0.1430804, 0.0606169, 0.7141733],
} as const
const CURVE_STEPS = 1024
const HEADER_BYTES = 128

/** A display profile for sRGB in the older version 2 of the format, which every PDF/A part takes: what the colours of a dossier mean. */
export function srgbProfile(): Uint8Array {
  const curve = curveTag()
  const tags: (readonly [string, Buffer])[] = [
    ['desc', describedAs('sRGB IEC61966-2.1')],
    ['cprt', textTag('No copyright, use freely')],
    ...Object.entries(COLOURS).map(([name, xyz]) => [name, xyzTag(xyz)] as const),
    ['rTRC', curve],
    ['gTRC', curve],
    ['bTRC', curve],
  ]
  const table = Buffer.alloc(4 + 12 * tags.length)
  table.writeUInt32BE(tags.length, 0)
  const bodies: Buffer[] = []
  const placed = new Map<Buffer, number>()
  let at = HEADER_BYTES + table.length
  for (const [index, [name, body]] of tags.entries()) {
    if (!placed.has(body)) {
      placed.set(body, at)
      bodies.push(body)
      at += body.length
    }
    table.write(name, 4 + 12 * index, 'latin1')
    table.writeUInt32BE(placed.get(body) ?? 0, 8 + 12 * index)
    table.writeUInt32BE(body.length, 12 + 12 * index)
  }
  return Buffer.concat([header(at), table, ...bodies])
}

function header(sizeBytes: number): Buffer {
  const bytes = Buffer.alloc(HEADER_BYTES)
  bytes.writeUInt32BE(sizeBytes, 0)
  bytes.writeUInt32BE(0x02100000, 8)
  bytes.write('mntrRGB XYZ ', 12, 'latin1')
  for (const [index, part] of [2026, 1, 1, 0, 0, 0].entries()) bytes.writeUInt16BE(part, 24 + 2 * index)
  bytes.write('acsp', 36, 'latin1')
  for (const [index, part] of COLOURS.wtpt.entries()) bytes.writeInt32BE(fixed(part), 68 + 4 * index)
  return bytes
}

function describedAs(text: string): Buffer {
  const bytes = Buffer.alloc(padded(12 + text.length + 1 + 8 + 3 + 67))
  bytes.write('desc', 0, 'latin1')
  bytes.writeUInt32BE(text.length + 1, 8)
  bytes.write(text, 12, 'latin1')
  return bytes
}

function textTag(text: string): Buffer {
  const bytes = Buffer.alloc(padded(8 + text.length + 1))
  bytes.write('text', 0, 'latin1')
  bytes.write(text, 8, 'latin1')
  return bytes
}

function xyzTag(xyz: readonly number[]): Buffer {
  const bytes = Buffer.alloc(20)
  bytes.write('XYZ ', 0, 'latin1')
  for (const [index, part] of xyz.entries()) bytes.writeInt32BE(fixed(part), 8 + 4 * index)
  return bytes
}

function curveTag(): Buffer {
  const bytes = Buffer.alloc(12 + 2 * CURVE_STEPS)
  bytes.write('curv', 0, 'latin1')
  bytes.writeUInt32BE(CURVE_STEPS, 8)
  for (let step = 0; step < CURVE_STEPS; step += 1)
    bytes.writeUInt16BE(Math.round(linear(step / (CURVE_STEPS - 1)) * 0xffff), 12 + 2 * step)
  return bytes
}

/** Linear light of an sRGB value from 0 to 1. */
function linear(value: number): number {
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4
}

function fixed(value: number): number {
  return Math.round(value * 65536)
}

function padded(length: number): number {
  return Math.ceil(length / 4) * 4
}
