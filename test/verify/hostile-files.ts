import { deflateSync } from 'node:zlib'
import { seededNumbers } from './flip-bytes'

export type Hostile = { name: string; file: Uint8Array }

const latin1 = (text: string): Buffer => Buffer.from(text, 'latin1')
const HEAD = latin1('%PDF-1.7\n%\x81\x81\x81\x81\n')

/** A file of these objects, numbered in order, with a right table whatever the objects hold. */
export function fileOf(objects: readonly (string | Buffer)[], trailer = '/Root 1 0 R'): Uint8Array {
  const parts = [HEAD]
  const rows: string[] = []
  let at = HEAD.length
  for (const [index, value] of objects.entries()) {
    const object = Buffer.concat([
      latin1(`${index + 1} 0 obj\n`),
      typeof value === 'string' ? latin1(value) : value,
      latin1('\nendobj\n'),
    ])
    rows.push(`${String(at).padStart(10, '0')} 00000 n \n`)
    at += object.length
    parts.push(object)
  }
  const size = objects.length + 1
  parts.push(
    latin1(
      `xref\n0 ${size}\n0000000000 65535 f \n${rows.join('')}trailer\n<< /Size ${size} ${trailer} >>\nstartxref\n${at}\n%%EOF\n`,
    ),
  )
  return new Uint8Array(Buffer.concat(parts))
}

const NAMES = ['checkpoint.txt', 'facts.jsonl', 'format.md', 'inclusion.jsonl', 'leaves.jsonl', 'manifest.json']

/** A file whose attachments are these packed bytes under these stated sizes, and nothing else of a dossier. */
export function withPacked(packed: Buffer, stated: number, contents = '00'): Uint8Array {
  const names = NAMES.map((name, index) => `(${name}) ${5 + 2 * index} 0 R`).join(' ')
  const associated = NAMES.map((_, index) => `${5 + 2 * index} 0 R`).join(' ')
  const files = NAMES.flatMap((name, index) => [
    Buffer.concat([
      latin1(
        `<< /Type /EmbeddedFile /Filter /FlateDecode /Params << /Size ${stated} >> /Length ${packed.length} >>\nstream\n`,
      ),
      packed,
      latin1('\nendstream'),
    ]),
    `<< /Type /Filespec /F (${name}) /EF << /F ${4 + 2 * index} 0 R >> >>`,
  ])
  return fileOf([
    `<< /Type /Catalog /Names << /EmbeddedFiles << /Names [${names}] >> >> /AF [${associated}] /AcroForm << /Fields [2 0 R] >> >>`,
    '<< /FT /Sig /V 3 0 R >>',
    `<< /Type /Sig /Filter /Adobe.PPKLite /SubFilter /ETSI.CAdES.detached /ByteRange [0 1 2 3] /Contents <${contents}> >>`,
    ...files,
  ])
}

/** Files made to make a checker run away: huge lengths, loops, bombs, deep nesting, random bytes. */
export function hostileFiles(): Hostile[] {
  const number = seededNumbers(8)
  const noise = (length: number): Buffer => Buffer.from(Uint8Array.from({ length }, () => number(256)))
  const zeros = deflateSync(Buffer.alloc(200 << 20))
  const lines = (line: string, sizeBytes: number): Buffer =>
    deflateSync(Buffer.from(`${line}\n`.repeat(Math.floor(sizeBytes / (line.length + 1)))), { level: 1 })
  const deep = (open: string, close: string): string => `${open.repeat(400_000)}${close.repeat(400_000)}`
  return [
    { name: 'nothing', file: new Uint8Array() },
    { name: 'random bytes', file: new Uint8Array(noise(2 << 20)) },
    { name: 'random bytes behind the head', file: new Uint8Array(Buffer.concat([HEAD, noise(2 << 20)])) },
    {
      name: 'an end without anything before it',
      file: new Uint8Array(Buffer.concat([HEAD, latin1('startxref\n15\n%%EOF\n')])),
    },
    {
      name: 'a table far beyond the end',
      file: new Uint8Array(Buffer.concat([HEAD, latin1('startxref\n999999999999999\n%%EOF\n')])),
    },
    {
      name: 'a table of far too many rows',
      file: new Uint8Array(
        Buffer.concat([HEAD, latin1('xref\n0 9999999\n0000000000 65535 f \ntrailer\n<< >>\nstartxref\n15\n%%EOF\n')]),
      ),
    },
    { name: 'six hundred thousand objects', file: fileOf(Array.from({ length: 600_000 }, () => 'null')) },
    { name: 'four hundred thousand objects', file: fileOf(Array.from({ length: 400_000 }, () => '<< /A [1 2 3] >>')) },
    {
      name: 'a stream of a huge length',
      file: fileOf(['<< /Type /Catalog /Length 9007199254740991 >>\nstream\nx\nendstream']),
    },
    {
      name: 'a stream of a length with twenty digits',
      file: fileOf(['<< /Type /Catalog /Length 99999999999999999999 >>\nstream\nx\nendstream']),
    },
    { name: 'arrays in arrays', file: fileOf([deep('[', ']')]) },
    { name: 'dictionaries in dictionaries', file: fileOf([deep('<</A ', '>>')]) },
    { name: 'texts in texts', file: fileOf([deep('(', ')')]) },
    { name: 'a root that is itself a reference', file: fileOf(['1 0 R']) },
    {
      name: 'parts that name each other',
      file: fileOf([
        '<< /Type /Catalog /AcroForm 2 0 R /Names 2 0 R /AF 2 0 R >>',
        '<< /Fields [2 0 R] /FT /Sig /V 2 0 R /EmbeddedFiles 2 0 R /Names [(checkpoint.txt) 2 0 R] /EF << /F 2 0 R >> >>',
      ]),
    },
    { name: 'a bomb that states a small size', file: withPacked(zeros, 1000) },
    { name: 'a bomb that states its size', file: withPacked(zeros, 200 << 20) },
    { name: 'a bomb of the largest size that is unpacked', file: withPacked(zeros, 12 << 20) },
    { name: 'a size that is no number', file: withPacked(zeros, Number.MAX_SAFE_INTEGER) },
    { name: 'empty lines by the million', file: withPacked(lines('', 1 << 20), 1 << 20) },
    { name: 'brackets by the million', file: withPacked(deflateSync(latin1('['.repeat(1 << 20))), 1 << 20) },
    { name: 'a signature of nested values', file: withPacked(lines('{}', 30), 30, `3080${'3080'.repeat(200_000)}`) },
    { name: 'a signature of a huge length', file: withPacked(lines('{}', 30), 30, '3084ffffffff') },
    {
      name: 'an export of one endless line',
      file: new Uint8Array(Buffer.concat([latin1('{"kind":"underwrap log",'), Buffer.alloc(30 << 20, 0x20)])),
    },
    { name: 'an export of brackets', file: new Uint8Array(latin1(`{"kind":"underwrap log",${'['.repeat(3 << 20)}\n`)) },
  ]
}
