'use client'
import { openSiteStore } from '@/lib/capture/site/site-store'
import type { Moment } from '@/lib/domain/time'
import { type PageOutbox, pageOutbox } from './page-outbox'

/** Where a photo belongs and what it shows. */
export type PhotoAbout = {
  stream: string
  observedAt: Moment
  enteredAt: Moment
  body: { point: string; attempt: number; caption: string; demand?: string; scan?: { sheet?: string } }
}
export type PhotoAttached =
  | { kind: 'in the record' }
  | { kind: 'on this device' }
  | { kind: 'refused'; refusal: { code: string; [fact: string]: unknown } }

/**
 * Send one photo under an id made here. When the server does not answer it is kept in the outbox of who works at this device, under the same id, so that it is received once
 * whether the first sending arrived or not.
 */
export async function attachPhoto(photo: Blob, about: PhotoAbout, id: string): Promise<PhotoAttached> {
  const page = await outboxHere()
  const device = await page?.device()
  const answer = await sendPhoto(photo, { ...about, id, ...(device ? { device } : {}) })
  if (answer !== 'no-answer') return answer
  if (!page || !device) return { kind: 'refused', refusal: { code: 'no-answer' } }
  const kept = await page.capture({ command: 'attach-photo', input: about, photos: [photo], id, device })
  return kept.ok ? { kind: 'on this device' } : { kind: 'refused', refusal: kept.error }
}

async function outboxHere(): Promise<PageOutbox | null> {
  if (!window.isSecureContext) return null
  const store = await openSiteStore()
  const owner = await store?.owner()
  store?.close()
  return owner ? pageOutbox(owner) : null
}

async function sendPhoto(photo: Blob, about: object): Promise<PhotoAttached | 'no-answer'> {
  try {
    const reply = await fetch('/api/photos', {
      method: 'POST',
      body: photo,
      headers: {
        'content-type': 'application/octet-stream',
        'x-underwrap-photo': encodeURIComponent(JSON.stringify(about)),
      },
    })
    const answer: unknown = await reply.json()
    return reply.ok ? { kind: 'in the record' } : { kind: 'refused', refusal: refusalIn(answer) }
  } catch (cause) {
    if (cause instanceof TypeError || cause instanceof SyntaxError) return 'no-answer'
    throw cause
  }
}

function refusalIn(answer: unknown): { code: string } {
  if (answer === null || typeof answer !== 'object' || !('error' in answer)) return { code: 'no-answer' }
  const { error } = answer
  return error !== null && typeof error === 'object' && 'code' in error && typeof error.code === 'string'
    ? { ...error, code: error.code }
    : { code: 'no-answer' }
}
