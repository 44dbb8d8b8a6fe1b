import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Sharp } from 'sharp'
import { createFolderPhotoStore } from '@/lib/photo/folder-photo-store'
import { DEFAULT_PHOTO_LIMITS, type PhotoIntake, type PhotoLimits } from '@/lib/photo/photo-intake'
import { pictureEngine } from '@/lib/photo/picture-engine'
import { takeInPhoto } from '@/lib/photo/take-in'

/** A pipe with a clamp, lopsided on purpose: no turning or mirroring of it looks like another. */
export function drawScene(widthPx: number, heightPx: number, tint = '#7a8f6a'): Sharp {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 300" preserveAspectRatio="none" width="${widthPx}" height="${heightPx}">
    <defs><linearGradient id="sky" x2="1" y2="1"><stop stop-color="#dfe6ee"/><stop offset="1" stop-color="${tint}"/></linearGradient></defs>
    <rect width="400" height="300" fill="url(#sky)"/><path d="M0 70 L400 150 V210 L0 120 Z" fill="#444c55"/>
    <rect x="60" y="60" width="50" height="90" fill="#b5552f"/><circle cx="310" cy="60" r="34" fill="#f2d16b"/>
    <path d="M20 290 L150 190 L190 290 Z" fill="#23303d"/><rect x="250" y="230" width="120" height="24" fill="#ffffff"/></svg>`
  return pictureEngine(Buffer.from(svg))
}

/** A photo store in a new temporary folder. */
export function makeTemporaryStore() {
  const folder = mkdtempSync(join(tmpdir(), 'photo-store-'))
  return { folder, store: createFolderPhotoStore(folder) }
}

const { store } = makeTemporaryStore()

/** Take bytes in with the default limits, or with those given. */
export function takeIn(bytes: Uint8Array, limits: PhotoLimits = DEFAULT_PHOTO_LIMITS) {
  return takeInPhoto({ bytes, store, limits })
}

/** Take bytes in that must be accepted; give the intake and the stored bytes. */
export async function takeInAccepted(bytes: Uint8Array) {
  const taken = await takeIn(bytes)
  if (!taken.ok) throw new Error(`Refused: ${JSON.stringify(taken.error)}`)
  const intake: PhotoIntake = taken.value
  return {
    intake,
    original: await readStored(intake.sha256),
    rendition: await readStored(intake.rendition.sha256),
    thumb: await readStored(intake.thumb.sha256),
  }
}

async function readStored(sha256: string): Promise<Uint8Array> {
  const bytes = await store.read(sha256)
  if (bytes === null) throw new Error(`Not stored: ${sha256}`)
  return bytes
}
