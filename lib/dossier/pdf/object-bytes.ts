import type { PDFContext, PDFObject } from 'pdf-lib'

/** A PDF object that is written from ready bytes: its number and its value. */
export type ReadyObject = { objectNo: number; value: string | Uint8Array }

/** The bytes of an object's value. */
export function bytesOfObject(object: PDFObject): Uint8Array {
  const bytes = new Uint8Array(object.sizeInBytes())
  object.copyBytesInto(bytes, 0)
  return bytes
}

/** Every object of a context, by number. */
export function* objectsOf(context: PDFContext): Iterable<ReadyObject> {
  for (const [ref, object] of context.enumerateIndirectObjects())
    yield { objectNo: ref.objectNumber, value: bytesOfObject(object) }
}
