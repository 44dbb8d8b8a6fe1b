import { inflateSync } from 'node:zlib'

/** What a PDF file of ours says, read from its bytes alone: text of each page in drawing order, the trailer, and where its objects lie. */
export type ReadPdf = {
  pages: string[]
  text: string
  wrongOffsets: number[]
  trailer: string
  bytesOf: (objectNo: number) => Buffer
}

/** Read a PDF written with a classic cross-reference table. @throws when it has none */
export function readPdf(bytes: Buffer): ReadPdf {
  const latin = bytes.toString('latin1')
  const startAt = Number(/startxref\n(\d+)\n%%EOF\n$/.exec(latin)?.[1])
  const table = /^xref\n0 (\d+)\n/.exec(latin.slice(startAt))
  if (!table) throw new Error('no cross-reference table where the file says')
  const offsets = [
    ...latin.slice(startAt + table[0].length, latin.indexOf('trailer', startAt)).matchAll(/(\d{10}) \d{5} ([nf]) \n/g),
  ].map((row) => (row[2] === 'n' ? Number(row[1]) : null))
  const wrongOffsets = offsets.flatMap((offset, no) =>
    offset !== null && !latin.startsWith(`${no} 0 obj\n`, offset) ? [no] : [],
  )
  const bytesOf = (no: number): Buffer => {
    const offset = offsets[no] ?? 0
    const from = latin.indexOf('stream\n', offset) + 7
    const length = Number(/\/Length (\d+)/.exec(latin.slice(offset, from))?.[1])
    return bytes.subarray(from, from + length)
  }
  const dictionary = (no: number): string => latin.slice(offsets[no] ?? 0, latin.indexOf('endobj', offsets[no] ?? 0))
  const trailer = latin.slice(latin.indexOf('trailer', startAt))
  const root = Number(/\/Root (\d+) 0 R/.exec(trailer)?.[1])
  const tree = Number(/\/Pages (\d+) 0 R/.exec(dictionary(root))?.[1])
  const kids = [...(/\/Kids \[([^\]]*)\]/.exec(dictionary(tree))?.[1] ?? '').matchAll(/(\d+) 0 R/g)].map((one) =>
    Number(one[1]),
  )
  const fonts = new Map<string, Map<string, string>>()
  const pages = kids.map((kid) => {
    const page = dictionary(kid)
    for (const [, name = '', no] of page.matchAll(/\/(F\d) (\d+) 0 R/g))
      if (!fonts.has(name))
        fonts.set(
          name,
          toUnicode(
            inflateSync(bytesOf(Number(/\/ToUnicode (\d+)/.exec(dictionary(Number(no)))?.[1]))).toString('latin1'),
          ),
        )
    return textOf(inflateSync(bytesOf(Number(/\/Contents (\d+)/.exec(page)?.[1]))).toString('latin1'), fonts)
  })
  return { pages, text: pages.join('\n'), wrongOffsets, trailer, bytesOf }
}

function toUnicode(map: string): Map<string, string> {
  return new Map(
    [...map.matchAll(/<([0-9a-f]{4})> <([0-9A-F]+)>/g)].map(([, code = '', hex = '']) => [
      code,
      Buffer.from(hex, 'hex').swap16().toString('utf16le'),
    ]),
  )
}

function textOf(content: string, fonts: ReadonlyMap<string, ReadonlyMap<string, string>>): string {
  return [...content.matchAll(/\/(F\d) [\d.]+ Tf [^<]*<([0-9a-f]*)> Tj/g)]
    .map(([, font = '', hex = '']) =>
      (hex.match(/.{4}/g) ?? []).map((code) => fonts.get(font)?.get(code) ?? '\uFFFD').join(''),
    )
    .join(' ')
}
