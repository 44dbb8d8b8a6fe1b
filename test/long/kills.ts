import { spawn } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { openStore } from '@/lib/server/store/open-store'
import { type Told, unlessKept } from './kept-after-kill'

const LONGEST_MS = 4000
const BEGINS_WITHIN_MS = 120_000

/** What the killed writers had acknowledged to them in all, and what of it was not found again. */
export type Kills = { rounds: number; killedServers: number; told: Told; faults: string[] }

/**
 * Kill a writer of the store in `dataDir` again and again at random moments, in every third round the database server with it, and look each time whether everything that was
 * acknowledged is there, the log has neither gap nor fork, and no dossier is half issued. The store is filled: `tenant-a` with repair MD-1.
 */
export async function killWriters(dataDir: string, rounds: number): Promise<Kills> {
  const kills: Kills = { rounds, killedServers: 0, told: { facts: [], heads: [], issues: [] }, faults: [] }
  for (let round = 1; round <= rounds; round += 1) {
    const killsServer = round % 3 === 0
    // While this process holds it open, the server outlives the writer.
    const holder = killsServer ? null : await openAgain(dataDir)
    // Every other writer is killed soon after its first issue, while it builds or appends the next.
    const lines = await killOne(dataDir, killsServer, round % 2 === 0 ? 'issue' : 'open')
    if (killsServer) kills.killedServers += 1
    const told = read(lines)
    kills.told.facts.push(...told.facts)
    kills.told.heads.push(...told.heads)
    kills.told.issues.push(...told.issues)
    const store = holder ?? (await openAgain(dataDir))
    const isThorough = round === rounds || round % 20 === 0
    const faults = await unlessKept(store, isThorough ? kills.told : told, isThorough)
    kills.faults.push(...faults.map((fault) => `round ${round}: ${fault}`))
    await store.close()
  }
  return kills
}

/** Lines that a writer told before it was killed; a last line without its end was not told. */
function killOne(dataDir: string, killsServer: boolean, from: 'open' | 'issue'): Promise<string[]> {
  const child = spawn(process.execPath, ['--import', 'tsx', 'test/long/killed-writer.ts', dataDir], {
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  let [told, problem, isKilled] = ['', '', false]
  const kill = () => {
    isKilled = true
    const kills = [() => child.kill('SIGKILL'), () => killsServer && killServer(dataDir)]
    for (const one of Math.random() < 0.5 ? kills : kills.reverse()) one()
  }
  let timer = setTimeout(kill, BEGINS_WITHIN_MS)
  const lines = createInterface({ input: child.stdout })
  lines.on('line', (line) => {
    if (line.split(' ')[0] !== from) return
    lines.removeAllListeners('line')
    clearTimeout(timer)
    timer = setTimeout(kill, Math.random() * LONGEST_MS)
  })
  child.stdout.on('data', (piece) => {
    told += piece
  })
  child.stderr.on('data', (piece) => {
    problem += piece
  })
  return new Promise((settle, fail) =>
    child.once('close', () => {
      clearTimeout(timer)
      if (isKilled && told.startsWith('open\n')) settle(told.split('\n').slice(1, -1))
      else fail(new Error(`the writer ended by itself: ${problem.slice(-2000)}`))
    }),
  )
}

/** The server's first process; the others of it end with it. */
function killServer(dataDir: string): void {
  const pid = Number(readFileSync(join(dataDir, 'db', 'postmaster.pid'), 'utf8').split('\n')[0])
  if (Number.isInteger(pid) && pid > 1) process.kill(pid, 'SIGKILL')
}

function read(lines: readonly string[]): Told {
  const told: Told = { facts: [], heads: [], issues: [] }
  for (const line of lines) {
    const [kind, first = '', second = ''] = line.split(' ')
    if (kind === 'fact') told.facts.push(first)
    else if (kind === 'head') told.heads.push({ size: Number(first), root: second })
    else if (kind === 'issue') told.issues.push({ revision: Number(first), sha256: second })
  }
  return told
}

/** A killed server's last processes may need a moment before another can start on its data. */
async function openAgain(dataDir: string) {
  for (let tries = 1; ; tries += 1) {
    try {
      return await openStore({ dataDir })
    } catch (cause) {
      if (tries === 20) throw cause
      await new Promise((settle) => setTimeout(settle, 500))
    }
  }
}
