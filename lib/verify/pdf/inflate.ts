import { adler32 } from './adler32'
import { type Codes, codesOf, InflateRefused, MOST_BITS, SHORT_BITS } from './prefix-codes'

const LENGTH_BASE = [
  3, 4, 5, 6, 7, 8, 9, 10, 11, 13, 15, 17, 19, 23, 27, 31, 35, 43, 51, 59, 67, 83, 99, 115, 131, 163, 195, 227, 258,
]
const LENGTH_EXTRA = [0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2, 2, 3, 3, 3, 3, 4, 4, 4, 4, 5, 5, 5, 5, 0]
const FAR_BASE = [
  1, 2, 3, 4, 5, 7, 9, 13, 17, 25, 33, 49, 65, 97, 129, 193, 257, 385, 513, 769, 1025, 1537, 2049, 3073, 4097, 6145,
  8193, 12289, 16385, 24577,
]
const FAR_EXTRA = [0, 0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 5, 5, 6, 6, 7, 7, 8, 8, 9, 9, 10, 10, 11, 11, 12, 12, 13, 13]
const CODE_ORDER = [16, 17, 18, 0, 8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14, 1, 15]

/**
 * Inflate a zlib stream whose size is known: it must give exactly `sizeBytes` bytes, end where the input ends, and agree with its checksum. Memory is the size
 * asked for, whatever the input says.
 * @throws InflateRefused @source RFC 1950, RFC 1951
 */
export function inflate(input: Uint8Array, sizeBytes: number): Uint8Array {
  const [method = 0, flags = 0] = input
  if ((method & 0x0f) !== 8 || method >> 4 > 7 || (method * 256 + flags) % 31 !== 0 || (flags & 0x20) !== 0)
    throw new InflateRefused('no zlib stream')
  const bits = new Bits(input, 2)
  const out = new Out(sizeBytes)
  let isLast = false
  while (!isLast) {
    isLast = bits.take(1) === 1
    const type = bits.take(2)
    if (type === 0) stored(bits, out)
    else if (type === 1) coded(bits, out, FIXED.lengths, FIXED.fars)
    else if (type === 2) {
      const { lengths, fars } = readCodes(bits)
      coded(bits, out, lengths, fars)
    } else throw new InflateRefused('a block of no kind')
  }
  const end = bits.alignedAt()
  if (out.at !== sizeBytes) throw new InflateRefused('less than was said')
  if (end + 4 !== input.length) throw new InflateRefused('something stands behind the end')
  const view = new DataView(input.buffer, input.byteOffset, input.byteLength)
  if (view.getUint32(end) !== adler32(out.bytes)) throw new InflateRefused('the checksum is another')
  return out.bytes
}

class Bits {
  private held = 0
  private count = 0
  constructor(
    private readonly input: Uint8Array,
    private at: number,
  ) {}

  take(need: number): number {
    while (this.count < need) {
      const byte = this.input[this.at]
      if (byte === undefined) throw new InflateRefused('ends early')
      this.held |= byte << this.count
      this.at += 1
      this.count += 8
    }
    const value = this.held & ((1 << need) - 1)
    this.held >>>= need
    this.count -= need
    return value
  }

  /** The next bits as far as there are any, not taken. */
  peek(most: number): number {
    while (this.count < most && this.at < this.input.length) {
      this.held |= (this.input[this.at] ?? 0) << this.count
      this.at += 1
      this.count += 8
    }
    return this.held & ((1 << most) - 1)
  }

  /** Pass over bits that were peeked at. */
  skip(count: number): void {
    if (count > this.count) throw new InflateRefused('ends early')
    this.held >>>= count
    this.count -= count
  }

  /** Offset of the next whole byte; what is left of the present one must be zero. */
  alignedAt(): number {
    this.at -= this.count >> 3
    if ((this.held & ((1 << (this.count & 7)) - 1)) !== 0) throw new InflateRefused('bits that say nothing')
    this.held = 0
    this.count = 0
    return this.at
  }

  copy(length: number): Uint8Array {
    const from = this.at
    if (from + length > this.input.length) throw new InflateRefused('ends early')
    this.at += length
    return this.input.subarray(from, this.at)
  }
}

class Out {
  readonly bytes: Uint8Array
  at = 0
  constructor(sizeBytes: number) {
    this.bytes = new Uint8Array(sizeBytes)
  }

  put(byte: number): void {
    if (this.at === this.bytes.length) throw new InflateRefused('more than was said')
    this.bytes[this.at] = byte
    this.at += 1
  }

  repeat(far: number, length: number): void {
    if (far > this.at) throw new InflateRefused('points before the start')
    if (this.at + length > this.bytes.length) throw new InflateRefused('more than was said')
    for (let count = 0; count < length; count += 1, this.at += 1) this.bytes[this.at] = this.bytes[this.at - far] ?? 0
  }
}

function stored(bits: Bits, out: Out): void {
  bits.alignedAt()
  const [a = 0, b = 0, c = 0, d = 0] = bits.copy(4)
  const length = a | (b << 8)
  if (length !== (~(c | (d << 8)) & 0xffff)) throw new InflateRefused('a stored block of another length')
  for (const byte of bits.copy(length)) out.put(byte)
}

function coded(bits: Bits, out: Out, lengths: Codes, fars: Codes): void {
  for (;;) {
    const symbol = decode(bits, lengths)
    if (symbol < 256) out.put(symbol)
    else if (symbol === 256) return
    else {
      const [base, extra] = [LENGTH_BASE[symbol - 257], LENGTH_EXTRA[symbol - 257]]
      if (base === undefined || extra === undefined) throw new InflateRefused('a length of no kind')
      const length = base + bits.take(extra)
      const far = decode(bits, fars)
      const [farBase, farExtra] = [FAR_BASE[far], FAR_EXTRA[far]]
      if (farBase === undefined || farExtra === undefined) throw new InflateRefused('a distance of no kind')
      out.repeat(farBase + bits.take(farExtra), length)
    }
  }
}

function decode(bits: Bits, { counts, symbols, short }: Codes): number {
  const entry = short[bits.peek(SHORT_BITS)] ?? 0
  if (entry !== 0) {
    bits.skip(entry >> 9)
    return entry & 511
  }
  let [code, first, index] = [0, 0, 0]
  for (let length = 1; length <= MOST_BITS; length += 1) {
    code |= bits.take(1)
    const count = counts[length] ?? 0
    if (code - first < count) return symbols[index + code - first] ?? 0
    index += count
    first = (first + count) << 1
    code <<= 1
  }
  throw new InflateRefused('a code of no kind')
}

function readCodes(bits: Bits): { lengths: Codes; fars: Codes } {
  const [lengthCount, farCount, codeCount] = [bits.take(5) + 257, bits.take(5) + 1, bits.take(4) + 4]
  const codeLengths = new Array<number>(19).fill(0)
  for (const symbol of CODE_ORDER.slice(0, codeCount)) codeLengths[symbol] = bits.take(3)
  const codes = codesOf(codeLengths)
  const all: number[] = []
  while (all.length < lengthCount + farCount) {
    const symbol = decode(bits, codes)
    if (symbol < 16) all.push(symbol)
    else {
      const last = all.at(-1)
      if (symbol === 16 && last === undefined) throw new InflateRefused('repeats nothing')
      const [value, times] =
        symbol === 16 ? [last ?? 0, 3 + bits.take(2)] : [0, symbol === 17 ? 3 + bits.take(3) : 11 + bits.take(7)]
      for (let count = 0; count < times; count += 1) all.push(value)
    }
  }
  if (all.length > lengthCount + farCount || all[256] === 0) throw new InflateRefused('codes of no kind')
  return { lengths: codesOf(all.slice(0, lengthCount)), fars: codesOf(all.slice(lengthCount)) }
}

const FIXED = {
  lengths: codesOf(
    Array.from({ length: 288 }, (_, symbol) => (symbol < 144 ? 8 : symbol < 256 ? 9 : symbol < 280 ? 7 : 8)),
  ),
  fars: codesOf(new Array<number>(30).fill(5)),
}
