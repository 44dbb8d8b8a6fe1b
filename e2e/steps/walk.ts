import type { Page } from '@playwright/test'
import { setClock } from './clock'
import { type Releases, type Signs, sign, submitAndRelease } from './people'
import { uploadDemandedPhotos } from './photos'
import { RecordFormHand } from './record-form'

export const QI = 'tobias-wrenfield'
export const L1 = 'maren-osterfalk'
export const T1 = 'dorrit-akande'
export const E = 'ravi-castellane'
export const K = 'ludmila-stannard'
export const S = 'odile-brackhurst'
export const QJ = 'ysolde-pender'

/** A walk through one repair: each point opened by its page, recorded by its forms, closed by its signatures and releases. */
export class Walk {
  constructor(
    readonly page: Page,
    readonly number: string,
    readonly day: string,
  ) {}

  at(clock: string, day = this.day): void {
    setClock(day, clock)
  }

  async open(point: string, attempt = 1): Promise<void> {
    await this.page.goto(`/repairs/${this.number}/points/${point}?attempt=${attempt}`)
  }

  async form(point: string, type: string, attempt = 1): Promise<RecordFormHand> {
    await this.page.goto(`/repairs/${this.number}/points/${point}/record/${type}?attempt=${attempt}`)
    return this.hand()
  }

  /** Photos, signatures, submission and releases of a point. */
  async close(point: string, signs: Signs, releases: Releases, attempt = 1): Promise<void> {
    await this.open(point, attempt)
    await uploadDemandedPhotos(this.page)
    await this.decide(signs, releases)
  }

  /** Whose hands fill the open form. */
  protected hand(): RecordFormHand {
    return new RecordFormHand(this.page)
  }

  /** Signatures, submission and releases of the open point. */
  protected async decide(signs: Signs, releases: Releases): Promise<void> {
    for (const [id, meaning] of signs) await sign(this.page, id, meaning)
    await submitAndRelease(this.page, releases)
  }
}
