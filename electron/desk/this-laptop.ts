/** What both windows of the program must agree on: where its folder is, and which laptop this is. */
import { createHash } from 'node:crypto'
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { homedir, hostname } from 'node:os'
import { join } from 'node:path'

/** Where a person's station logs lie unless they say otherwise: where their system keeps such things. */
export function usualFolder({
  platform,
  env,
}: Pick<NodeJS.Process, 'platform' | 'env'> = process): string {
  if (platform === 'win32') return join(env.LOCALAPPDATA ?? homedir(), 'Duskline')
  if (platform === 'darwin') return join(homedir(), 'Library', 'Application Support', 'Duskline')
  return join(env.XDG_DATA_HOME || join(homedir(), '.local', 'share'), 'duskline')
}

/**
 * A mark that tells this laptop from others: drawn once and kept outside any folder of logs, so that a
 * folder copied to a stick does not carry it along, and mixed with the computer's name, so that a disk
 * copied whole does not either. A digest: neither of the two can be read from it.
 */
export function thisLaptop(randomBytes: (count: number) => Uint8Array): string {
  const home = usualFolder()
  const drawn = readDrawn(home) ?? draw(home, randomBytes)
  return createHash('sha256').update(`${drawn} ${hostname()}`).digest('hex').slice(0, 16)
}

const markName = 'this-laptop'

function readDrawn(home: string): string | undefined {
  try {
    return readFileSync(join(home, markName), 'utf8')
  } catch {
    return undefined
  }
}

function draw(home: string, randomBytes: (count: number) => Uint8Array): string {
  const drawn = Buffer.from(randomBytes(16)).toString('hex')
  try {
    mkdirSync(home, { recursive: true })
    writeFileSync(join(home, markName), drawn, { flag: 'wx', mode: 0o600 })
    return drawn
  } catch {
    // A home that cannot be written: the computer's name alone has to do.
    return ''
  }
}
