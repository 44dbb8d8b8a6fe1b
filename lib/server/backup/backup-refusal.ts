/** Why a backup was not restored: one plain line, and nothing was changed. */
export class BackupRefused extends Error {
  constructor(
    readonly code:
      | 'unreadable'
      | 'damaged'
      | 'store-not-empty'
      | 'head-differs'
      | 'older-than-known'
      | 'known-differs'
      | 'known-unreadable',
    message: string,
  ) {
    super(message)
    this.name = 'BackupRefused'
  }
}
