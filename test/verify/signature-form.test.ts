import { beforeAll, describe, expect, test } from 'vitest'
import { derOf, parseDer, partsOf, sequence, tagged } from '@/lib/dossier/sign/der'
import { holderByHand } from './holder-by-hand'
import { lowerHex } from './pdf-by-hand'
import { check, codesOf, preparedWorld, signedFile } from './signed-by-hand'

let world: Awaited<ReturnType<typeof preparedWorld>>
beforeAll(async () => {
  world = await preparedWorld()
})

describe('a signature written otherwise', () => {
  const changed = async (parts: Parameters<typeof signedFile>[2]) =>
    codesOf(await check(await signedFile(world.contents, world.holder.identity, parts)))

  test('upper-case hex digits', async () => {
    expect(await changed({ hexOf: (der, room) => lowerHex(der, room).toUpperCase() })).toEqual(['contents-upper-case'])
  })

  test('something behind the DER', async () => {
    expect(await changed({ hexOf: (der, room) => `${lowerHex(der, room).slice(0, -2)}01` })).toEqual([
      'padding-not-zero',
    ])
  })

  test('a length that is not the shortest', async () => {
    const long = (der: Uint8Array): Uint8Array => {
      const [tag = 0, , high = 0, low = 0] = der
      return Uint8Array.of(tag, 0x83, 0, high, low, ...der.subarray(4))
    }
    expect(await changed({ changeDer: long })).toEqual(['signature-not-der'])
  })

  test('one more certificate', async () => {
    const { der } = (await holderByHand(9)).identity.certificate
    const doubled = (cms: Uint8Array): Uint8Array => {
      const [type, body] = partsOf(parseDer(cms))
      const [version, digests, content, , signers] = partsOf(partsOf(body)[0])
      const own = parseDer(world.holder.identity.certificate.der)
      if (!type || !version || !digests || !content || !signers) throw new Error('no CMS')
      return derOf(
        sequence(type, tagged(0, [sequence(version, digests, content, tagged(0, [own, parseDer(der)]), signers)])),
      )
    }
    expect(await changed({ changeDer: doubled })).toEqual(['signature-certificates'])
  })

  test('an unsigned attribute that is no time stamp', async () => {
    const more = (cms: Uint8Array): Uint8Array => {
      const [type, body] = partsOf(parseDer(cms))
      const [version, digests, content, certificates, signers] = partsOf(partsOf(body)[0])
      if (!type || !version || !digests || !content || !certificates || !signers) throw new Error('no CMS')
      const signer = partsOf(partsOf(signers)[0])
      const attributes = tagged(1, [partsOf(signer[3])[0] ?? type])
      const set = parseDer(derOf(signers)) as typeof signers
      partsOf(set)[0] = sequence(...signer, attributes)
      return derOf(sequence(type, tagged(0, [sequence(version, digests, content, certificates, set)])))
    }
    expect(await changed({ changeDer: more })).toEqual(['signature-attributes'])
  })
})
