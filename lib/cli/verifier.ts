import { runVerify } from './run-verify'

/** The checker alone, made into one file by `npm run build:verifier`: `node underwrap-verify.mjs FILE [--key FILE] ...`. */
await runVerify(process.argv.slice(2)).catch((cause: unknown) => {
  process.stderr.write(`underwrap verify: ${cause instanceof Error ? cause.message : String(cause)}\n`)
  process.exitCode = 2
})
