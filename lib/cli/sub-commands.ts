/** One sub-command of `underwrap`. It writes its answer to standard output and throws what it cannot do. */
export type SubCommand = { usage: string; about: string; load(): Promise<(parameters: string[]) => Promise<void>> }

/** The sub-commands by name; each is loaded only when asked for. */
export const subCommands: Readonly<Record<string, SubCommand>> = {
  'seed-demo': {
    usage: 'seed-demo',
    about: 'fill an empty store with the demo',
    load: async () => (await import('./run-seed-demo')).runSeedDemo,
  },
  trace: {
    usage: 'trace BATCH [--json] [--tenant SLUG]',
    about: 'where a batch went: repairs, attempts, mixes, plies, and its balance',
    load: async () => (await import('./run-trace')).runTrace,
  },
  dossier: {
    usage: 'dossier REPAIR --out FILE.pdf [--tenant SLUG]',
    about: 'write a copy for review; issues nothing',
    load: async () => (await import('./run-dossier')).runDossier,
  },
  verify: {
    usage: 'verify FILE [--key FILE] [--checkpoint FILE] [--fingerprint HEX] [--json]',
    about: 'check a dossier or a log export from its bytes alone; needs no store',
    load: async () => (await import('./run-verify')).runVerify,
  },
  package: {
    usage: 'package REPAIR FILE.zip [--revision N] [--tenant SLUG]',
    about: 'the dossier with original photos, certificates and readings in one ZIP',
    load: async () => (await import('./run-package')).runPackage,
  },
  reproject: {
    usage: 'reproject [--tenant SLUG]',
    about: 'drop and rebuild everything that is derived from the facts',
    load: async () => (await import('./run-reproject')).runReproject,
  },
  'check-store': {
    usage: 'check-store',
    about: 'check facts, log, projections, photos and dossiers; changes nothing',
    load: async () => (await import('./run-check-store')).runCheckStore,
  },
  backup: {
    usage: 'backup FILE',
    about: 'write the whole store, with its keys, into one file',
    load: async () => (await import('./run-backup')).runBackup,
  },
  restore: {
    usage: 'restore FILE [--known CHECKPOINT]',
    about: 'fill an empty store from a backup; the log has the same head or nothing is restored',
    load: async () => (await import('./run-restore')).runRestore,
  },
  'export-log': {
    usage: 'export-log FILE [--tenant SLUG]',
    about: 'write the whole log with its checkpoint, for anyone to check',
    load: async () => (await import('./run-export-log')).runExportLog,
  },
  'rotate-log-key': {
    usage: 'rotate-log-key --reason TEXT [--by PERSON] [--tenant SLUG]',
    about: 'take a new key that signs the log; the former one vouches for it',
    load: async () => (await import('./run-rotate-log-key')).runRotateLogKey,
  },
  vectors: {
    usage: 'vectors FILE.json',
    about: 'run reference cases through the formulas; needs no store',
    load: async () => (await import('./run-vectors-file')).runVectorsFile,
  },
  work: {
    usage: 'work',
    about: 'do queued work (dossiers) until stopped',
    load: async () => (await import('./run-work')).runWork,
  },
  help: {
    usage: 'help',
    about: 'this list',
    load: async () => (await import('./run-help')).runHelp,
  },
}
