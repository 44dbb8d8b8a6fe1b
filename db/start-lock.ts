import { readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

/** Run a task while no other process starts the server of this data folder. A lock whose process is gone is taken over. */
export async function withStartLock<T>(dataDir: string, task: () => Promise<T>): Promise<T> {
  const file = join(dataDir, '.starting')
  while (!tryLock(file)) await new Promise((settle) => setTimeout(settle, 50))
  try {
    return await task()
  } finally {
    rmSync(file, { force: true })
  }
}

function tryLock(file: string): boolean {
  try {
    writeFileSync(file, String(process.pid), { flag: 'wx' })
    return true
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error
    if (!isHeld(file)) rmSync(file, { force: true })
    return false
  }
}

function isHeld(file: string): boolean {
  try {
    const holder = Number(readFileSync(file, 'utf8'))
    // An empty file is one whose holder has not yet written its number.
    if (!holder) return true
    if (holder === process.pid) return true
    process.kill(holder, 0)
    return true
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM'
  }
}
