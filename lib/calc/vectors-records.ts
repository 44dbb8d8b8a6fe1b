import { type Argument, list, optional, text, whole } from '@/lib/calc/argument'
import { canonicalJson } from '@/lib/calc/canonical-json'
import { formula } from '@/lib/calc/formula'
import { chainLinks, firstBadLink } from '@/lib/calc/hash-chain'
import { parseHex, showHex } from '@/lib/calc/hex'
import { inclusionProof, leafHash, type Sha256, treeHead, verifyInclusion } from '@/lib/calc/merkle-tree'
import { isRefused, refuse } from '@/lib/calc/refusal'

type HexArgument = Argument<string | null, Uint8Array>

/** Bytes written in hexadecimal. Refuses `missing_CODE`, `bad_hex`. */
function hexBytes(code: string): HexArgument {
  return {
    code,
    read: (value) => {
      if (value === null || value === undefined) return refuse(`missing_${code}`)
      return (typeof value === 'string' ? parseHex(value) : null) ?? refuse('bad_hex')
    },
  }
}

const ENTRIES = { entries: list('data_hex', hexBytes('data_hex')) }
const CHAIN = { ...ENTRIES, genesis: optional(hexBytes('genesis')) }

/** The reference functions of records: digests, trees, chains and canonical text. */
export function recordFormulas(sha256: Sha256) {
  const leaf = formula({ bytes: hexBytes('data_hex') }, ({ bytes }) => ({ hex: showHex(leafHash(bytes, sha256)) }))
  const tree = formula(ENTRIES, ({ entries }) => ({
    size: entries.length,
    head: showHex(
      treeHead(
        entries.map((entry) => leafHash(entry, sha256)),
        sha256,
      ),
    ),
  }))
  const proof = formula({ ...ENTRIES, index: whole('index') }, ({ entries, index }) => {
    const leaves = entries.map((entry) => leafHash(entry, sha256))
    const path = inclusionProof(leaves, index, sha256)
    const own = leaves[index]
    if (isRefused(path) || own === undefined) return refuse('index_out_of_range')
    return { proof: path.map(showHex), leaf: showHex(own), head: showHex(treeHead(leaves, sha256)) }
  })
  const verify = formula(
    {
      index: whole('index'),
      size: whole('size'),
      leaf: hexBytes('leaf_hex'),
      proof: list('proof', hexBytes('proof')),
      head: hexBytes('head'),
    },
    (claim) => {
      const isShown = verifyInclusion(claim, sha256)
      return isRefused(isShown) ? isShown : { ok: isShown }
    },
  )
  const chain = formula(CHAIN, ({ entries, genesis }) => {
    const made = chainLinks(entries, genesis, sha256)
    return isRefused(made) ? made : { links: made.links.map(showHex), head: showHex(made.head) }
  })
  const chainCheck = formula({ ...CHAIN, links: list('links', hexBytes('links')) }, ({ entries, genesis, links }) => {
    const firstBad = firstBadLink(entries, links, genesis, sha256)
    return isRefused(firstBad) ? firstBad : { first_bad: firstBad }
  })
  const canonical = formula({ jsonText: text('json_text') }, ({ jsonText }) => {
    const written = canonicalJson(jsonText)
    if (isRefused(written)) return written
    return { text: written.text, sha256: showHex(sha256(new TextEncoder().encode(written.text))) }
  })
  return {
    'hash.leaf': leaf.byReferenceName,
    'hash.tree': tree.byReferenceName,
    'hash.proof': proof.byReferenceName,
    'hash.verify': verify.byReferenceName,
    'hash.chain': chain.byReferenceName,
    'hash.chain_check': chainCheck.byReferenceName,
    'jcs.text': canonical.byReferenceName,
  }
}
