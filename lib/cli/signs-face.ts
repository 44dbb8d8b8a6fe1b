import { readFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import subsetFont from 'subset-font'

/** What the screens show beyond the Latin alphabets: limits, arrows and the letters of formulas. `app/_ui/face.ts` names the same. */
export const SIGNS = 'ΔΣΦαβγενπρτ⁴⁶⁻₀₁₂ₙ→√∫≈≤≥⌈⌉⌊⌋◆✓'

/** The face of these signs alone, cut from DejaVu Sans, as WOFF2 bytes; the same bytes at each call. @throws when the package of the face is not installed */
export async function drawSigns(): Promise<Buffer> {
  const folder = dirname(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/package.json'))
  const whole = await readFile(join(folder, 'ttf', 'DejaVuSans.ttf'))
  return subsetFont(whole, SIGNS, { targetFormat: 'woff2', noLayoutClosure: true, noHinting: true })
}
