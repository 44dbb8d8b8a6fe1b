import { randomBytes } from 'node:crypto'
import * as asn1js from 'asn1js'
import { checkTimeStamp, TimeStampRefused } from './check-time-stamp'
import { derOf, octets, oid, parseDer, partsOf, sequence } from './der'

const SHA256 = '2.16.840.1.101.3.4.2.1'
const WAIT_MS = 20_000
const MOST_BYTES = 1 << 16

/**
 * Ask a time-stamp service (RFC 3161 over HTTP) for a token over a digest. The answer is checked in full and brought down to the one certificate of its signer.
 * @returns the token in DER
 * @throws TimeStampRefused when the service cannot be reached, refuses, or answers wrongly
 */
export async function askTimeStamp(url: string, sha256: Uint8Array): Promise<Uint8Array> {
  const nonce = new Uint8Array([1, ...randomBytes(15)])
  const request = sequence(
    new asn1js.Integer({ value: 1 }),
    sequence(sequence(oid(SHA256), new asn1js.Null()), octets(sha256)),
    new asn1js.Integer({ valueHex: nonce.buffer }),
    new asn1js.Boolean({ value: true }),
  )
  const answer = await post(url, derOf(request))
  return checkTimeStamp(tokenOf(answer), sha256, nonce)
}

async function post(url: string, body: Uint8Array): Promise<Uint8Array> {
  try {
    const response = await fetch(url, {
      method: 'POST',
      headers: { 'content-type': 'application/timestamp-query', accept: 'application/timestamp-reply' },
      body: new Uint8Array(body).buffer,
      signal: AbortSignal.timeout(WAIT_MS),
    })
    if (!response.ok) throw new TimeStampRefused(`it answered with status ${response.status}`)
    const bytes = new Uint8Array(await response.arrayBuffer())
    if (bytes.length > MOST_BYTES) throw new TimeStampRefused('its answer is far too long')
    return bytes
  } catch (cause) {
    if (cause instanceof TimeStampRefused) throw cause
    throw new TimeStampRefused('it cannot be reached', { cause })
  }
}

function tokenOf(answer: Uint8Array): asn1js.AsnType {
  try {
    const [status, token] = partsOf(parseDer(answer))
    const [code] = partsOf(status)
    const granted = code instanceof asn1js.Integer ? code.valueBlock.valueDec : -1
    if (granted !== 0 && granted !== 1) throw new TimeStampRefused(`it refused with status ${granted}`)
    if (!token) throw new TimeStampRefused('its answer holds no token')
    return token
  } catch (cause) {
    if (cause instanceof TimeStampRefused) throw cause
    throw new TimeStampRefused('its answer is no time-stamp reply', { cause })
  }
}
