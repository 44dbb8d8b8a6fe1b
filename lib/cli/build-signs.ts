import { writeFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import { say } from './say'
import { drawSigns } from './signs-face'

/** Draw the face of signs anew after a sign was added: `npm run build:signs`. */
const file = fileURLToPath(new URL('../../app/_ui/signs.woff2', import.meta.url))
await writeFile(file, await drawSigns())
await say(file)
