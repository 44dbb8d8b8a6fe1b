import * as asn1js from 'asn1js'

/** Parse one DER value that fills the bytes exactly. @throws RangeError when it does not */
export function parseDer(bytes: Uint8Array): asn1js.AsnType {
  const read = asn1js.fromBER(new Uint8Array(bytes).buffer)
  if (read.offset !== bytes.length || read.result.error) throw new RangeError('Expected one DER value')
  return read.result
}

/** The bytes of a value. */
export function derOf(value: asn1js.AsnType): Uint8Array {
  return new Uint8Array(value.toBER(false))
}

/** The values inside a constructed value, in order. @throws RangeError when the value is a primitive */
export function partsOf(value: asn1js.AsnType | undefined): asn1js.AsnType[] {
  if (!(value instanceof asn1js.Constructed || value instanceof asn1js.Sequence || value instanceof asn1js.Set))
    throw new RangeError('Expected a constructed DER value')
  return value.valueBlock.value
}

/** A sequence of values. */
export function sequence(...value: asn1js.AsnType[]): asn1js.Sequence {
  return new asn1js.Sequence({ value })
}

/** A set of values in DER order. */
export function setOf(...values: asn1js.AsnType[]): asn1js.Set {
  return new asn1js.Set({ value: inOrder(values) })
}

/** Values under a context tag, constructed. */
export function tagged(tagNumber: number, value: asn1js.AsnType[]): asn1js.Constructed {
  return new asn1js.Constructed({ idBlock: { tagClass: 3, tagNumber }, value })
}

/** An object identifier by its dotted text. */
export function oid(value: string): asn1js.ObjectIdentifier {
  return new asn1js.ObjectIdentifier({ value })
}

/** Bytes as an octet string. */
export function octets(bytes: Uint8Array): asn1js.OctetString {
  return new asn1js.OctetString({ valueHex: new Uint8Array(bytes).buffer })
}

/** Values in the order in which DER writes a set. */
export function inOrder(values: readonly asn1js.AsnType[]): asn1js.AsnType[] {
  return [...values].sort((a, b) => Buffer.compare(derOf(a), derOf(b)))
}
