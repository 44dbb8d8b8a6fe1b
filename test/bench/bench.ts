import { benchDossier } from './dossier-build'
import { benchLogAppend } from './log-append'
import { benchPhotoIntake } from './photo-intake'
import { benchSiteCapture } from './site/site-capture'
import { benchVerify } from './verify-dossier'

/** All, or those named: `npm run bench -- site log`. The one of the site needs a build. */
const BENCHES = {
  photo: benchPhotoIntake,
  log: benchLogAppend,
  dossier: benchDossier,
  verify: benchVerify,
  site: benchSiteCapture,
}
const named = process.argv.slice(2)
const unknown = named.filter((name) => !Object.hasOwn(BENCHES, name))
if (unknown.length > 0) {
  console.error(`There is no bench ${unknown.join(', ')}. There are: ${Object.keys(BENCHES).join(', ')}.`)
  process.exit(1)
}
let missed = 0
for (const [key, bench] of Object.entries(BENCHES)) {
  if (named.length > 0 && !named.includes(key)) continue
  const { name, ratio, bound, lines } = await bench()
  if (ratio > bound) missed += 1
  console.log(`${ratio <= bound ? 'pass' : 'FAIL'}  ${name}: ratio ${ratio.toFixed(2)}, bound ${bound}`)
  for (const line of lines) console.log(`      ${line}`)
}
console.log(`peak memory of this process ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB`)
process.exitCode = missed > 0 ? 1 : 0
