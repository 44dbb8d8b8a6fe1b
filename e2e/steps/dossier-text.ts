import { execFileSync } from 'node:child_process'
import { expect, type Page } from '@playwright/test'

/** The text of a repair's dossier as it stands now, its white space made single. */
export async function dossierText(page: Page, number: string): Promise<string> {
  const reply = await page.request.get(`/api/dossiers/${number}/review`, { timeout: 120_000 })
  expect(reply.ok()).toBe(true)
  return execFileSync('pdftotext', ['-', '-'], { input: await reply.body() })
    .toString()
    .replaceAll(/\s+/g, ' ')
}
