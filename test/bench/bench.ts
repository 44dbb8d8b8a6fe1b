import { benchDossier } from './dossier-build'
import { benchPhotoIntake } from './photo-intake'

const results = [await benchPhotoIntake(), await benchDossier()]
for (const { name, ratio, bound, lines } of results) {
  console.log(`${ratio <= bound ? 'pass' : 'FAIL'}  ${name}: ratio ${ratio.toFixed(2)}, bound ${bound}`)
  for (const line of lines) console.log(`      ${line}`)
}
console.log(`peak memory of this process ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB`)
process.exitCode = results.every(({ ratio, bound }) => ratio <= bound) ? 0 : 1
