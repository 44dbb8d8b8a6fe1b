import { mkdirSync } from 'node:fs'
import { dirname, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'esbuild'
import { say } from './say'

const ROOT = fileURLToPath(new URL('../..', import.meta.url))

/** Make the checker into one file that `node` runs by itself, with nothing installed: `npm run build:verifier [-- FILE]`. */
const [to = 'out/underwrap-verify.mjs'] = process.argv.slice(2)
const outfile = resolve(to)
mkdirSync(dirname(outfile), { recursive: true })
await build({
  entryPoints: [resolve(ROOT, 'lib/cli/verifier.ts')],
  outfile,
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  minify: true,
  legalComments: 'inline',
  tsconfig: resolve(ROOT, 'tsconfig.json'),
  banner: {
    js: '#!/usr/bin/env node\n// Checks an Underwrap dossier or log export: node underwrap-verify.mjs FILE [--key FILE] [--json]',
  },
})
await say(outfile)
