import { existsSync } from 'node:fs'
import { createServer } from 'node:http'
import { chromium } from '@playwright/test'
import { build } from 'esbuild'
import { describe, expect, test } from 'vitest'
import { listen } from './serve-outbox'
import { type observeIndexed, observeMemory } from './store-in-page'

const CHROMIUM = process.env.CHROMIUM ?? '/usr/bin/chromium'

describe('where entries lie on a device', () => {
  test('memory keeps order, owners apart, and one entry under an id', async () => {
    const seen = await observeMemory()
    expect(seen.slice(0, 3)).toEqual([true, true, true])
    expect(seen[3]).toMatchObject({ ok: true, value: { seq: 1 } })
    expect(seen[4]).toEqual({ ok: false, error: { code: 'id-taken' } })
    expect(seen[8]).toMatchObject([
      [expect.stringMatching(/1$/), 1, 'waiting'],
      [expect.stringMatching(/2$/), 2, 'set aside'],
      [expect.stringMatching(/5$/), 2, 'waiting'],
      [expect.stringMatching(/3$/), 3, 'waiting'],
    ])
    expect(seen.slice(12, 15)).toEqual(['bytes', null, null])
    expect(seen[15]).toHaveLength(3)
    expect(seen.slice(17)).toEqual([
      [
        [
          [expect.stringMatching(/1$/), 1],
          [expect.stringMatching(/2$/), 2],
          [expect.stringMatching(/5$/), 2],
        ],
        { offsetMs: 3 },
      ],
      [[[expect.stringMatching(/4$/), 4]], null],
    ])
  })

  test.skipIf(!existsSync(CHROMIUM) && !process.env.CI)(
    'IndexedDB in Chromium does the same, and still holds it when opened anew [needs chromium]',
    async () => {
      const bundle = await build({
        entryPoints: ['test/capture/outbox/store-in-page.ts'],
        bundle: true,
        write: false,
        format: 'iife',
        alias: { '@': process.cwd() },
      })
      const script = bundle.outputFiles[0]?.text ?? ''
      const site = await listen(
        createServer((_incoming, outgoing) =>
          outgoing.writeHead(200, { 'content-type': 'text/html' }).end('<!doctype html>'),
        ),
      )
      const browser = await chromium.launch({
        executablePath: CHROMIUM,
        args: ['--no-sandbox', '--disable-background-networking', '--disable-quic'],
      })
      try {
        const page = await browser.newPage()
        await page.goto(site.url)
        await page.addScriptTag({ content: script })
        const { seen, reopened } = await page.evaluate(() =>
          (globalThis as unknown as { observeIndexed: typeof observeIndexed }).observeIndexed(),
        )
        expect(seen).toEqual(await observeMemory())
        expect(reopened).toEqual(seen[15])
      } finally {
        await browser.close()
        await site.close()
      }
    },
    60_000,
  )
})
