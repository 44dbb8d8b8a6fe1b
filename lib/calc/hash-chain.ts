import { DIGEST_BYTES, isSameBytes, leafHash, nodeHash, type Sha256 } from '@/lib/calc/merkle-tree'
import { type Refusal, refuse } from '@/lib/calc/refusal'

/**
 * Links of a chain over entries: h_0 = genesis, h_i = SHA-256(01 || h_(i-1) || leaf_i). Without a genesis h_0 is the empty tree
 * head. Refuses `digest_length` when the genesis is not 32 bytes.
 * A chain shows order and change, not who or when: those need a signature and a trusted clock.
 * @source convention of this project, in no standard. Confidence low for exchange.
 */
export function chainLinks(
  entries: readonly Uint8Array[],
  genesis: Uint8Array | null,
  sha256: Sha256,
): { readonly links: readonly Uint8Array[]; readonly head: Uint8Array } | Refusal {
  if (genesis !== null && genesis.length !== DIGEST_BYTES) return refuse('digest_length')
  let head = genesis ?? sha256(new Uint8Array(0))
  const links = entries.map((entry) => {
    head = nodeHash(head, leafHash(entry, sha256), sha256)
    return head
  })
  return { links, head }
}

/**
 * Index, from 0, of the first entry whose link does not follow from the entries before it, or -1 when all do. An entry without
 * a link and a link without an entry are bad too. Refuses `digest_length`.
 * @source as {@link chainLinks}.
 */
export function firstBadLink(
  entries: readonly Uint8Array[],
  links: readonly Uint8Array[],
  genesis: Uint8Array | null,
  sha256: Sha256,
): number | Refusal {
  if (links.some((link) => link.length !== DIGEST_BYTES)) return refuse('digest_length')
  const chain = chainLinks(entries, genesis, sha256)
  if ('refused' in chain) return chain
  for (const [index, link] of chain.links.entries()) {
    const given = links[index]
    if (given === undefined || !isSameBytes(given, link)) return index
  }
  return links.length > entries.length ? entries.length : -1
}
