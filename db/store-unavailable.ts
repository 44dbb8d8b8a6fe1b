export type UnavailableCode =
  | 'binaries-missing'
  | 'folder-unreachable'
  | 'version-mismatch'
  | 'secret-missing'
  | 'start-failed'
  | 'connection-refused'

/** The database cannot be had; the message is one plain line for the person at the terminal. */
export class StoreUnavailable extends Error {
  readonly code: UnavailableCode
  constructor(code: UnavailableCode, message: string, options?: { cause: unknown }) {
    super(message, options)
    this.name = 'StoreUnavailable'
    this.code = code
  }
}
