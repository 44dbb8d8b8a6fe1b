import { benchDossier } from './dossier-build'
import { benchLogAppend } from './log-append'
import { benchPhotoIntake } from './photo-intake'
import { benchVerify } from './verify-dossier'

let missed = 0
for (const bench of [benchPhotoIntake, benchLogAppend, benchDossier, benchVerify]) {
  const { name, ratio, bound, lines } = await bench()
  if (ratio > bound) missed += 1
  console.log(`${ratio <= bound ? 'pass' : 'FAIL'}  ${name}: ratio ${ratio.toFixed(2)}, bound ${bound}`)
  for (const line of lines) console.log(`      ${line}`)
}
console.log(`peak memory of this process ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB`)
process.exitCode = missed > 0 ? 1 : 0
