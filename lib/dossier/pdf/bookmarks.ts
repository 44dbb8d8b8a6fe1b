import { type PDFContext, PDFHexString, type PDFRef } from 'pdf-lib'
import type { LaidOut } from '../layout/placed'

/** The outline of a document: one entry a section, leading to its sheet. */
export function bookmarks(context: PDFContext, laidOut: LaidOut, pages: readonly PDFRef[]): PDFRef {
  const root = context.nextRef()
  const entries = laidOut.sectionSheets.map((section) => ({ section, ref: context.nextRef() }))
  for (const [index, { section, ref }] of entries.entries()) {
    const page = pages[section.sheetNo - 1]
    const [previous, next] = [entries[index - 1]?.ref, entries[index + 1]?.ref]
    context.assign(
      ref,
      context.obj({
        Title: PDFHexString.fromText(`${section.no} ${section.title}`.trim()),
        Parent: root,
        ...(page ? { Dest: [page, 'Fit'] } : {}),
        ...(previous ? { Prev: previous } : {}),
        ...(next ? { Next: next } : {}),
      }),
    )
  }
  const [first, last] = [entries[0]?.ref, entries.at(-1)?.ref]
  context.assign(
    root,
    context.obj({ Type: 'Outlines', Count: entries.length, ...(first && last ? { First: first, Last: last } : {}) }),
  )
  return root
}
