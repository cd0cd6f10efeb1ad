/** A real PostgreSQL of the system's own package, started on a loopback port for one file of tests. */
import { execFileSync, spawn } from 'node:child_process'
import { chmodSync, existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/** Where Debian's package puts the server's programs; undefined if it is not installed. */
export function serverPrograms(): string | undefined {
  const root = '/usr/lib/postgresql'
  if (!existsSync(root)) return undefined
  const newest = readdirSync(root).toSorted((a, b) => Number(b) - Number(a))[0]
  const programs = newest === undefined ? undefined : join(root, newest, 'bin')
  return programs && existsSync(join(programs, 'initdb')) ? programs : undefined
}

export interface RunningServer {
  readonly address: string
  readonly stop: () => Promise<void>
}

/** The server refuses to run as root: there it runs as nobody, in a folder of nobody's. */
function owner(): { uid?: number; gid?: number } {
  if (process.getuid?.() !== 0) return {}
  const id = (flag: string) => Number(execFileSync('id', [flag, 'nobody'], { encoding: 'utf8' }))
  return { uid: id('-u'), gid: id('-g') }
}

function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const address = server.address()
      server.close(() => resolve(typeof address === 'object' && address ? address.port : 0))
    })
  })
}

export async function startPostgres(programs: string): Promise<RunningServer> {
  const folder = mkdtempSync(join(tmpdir(), 'duskline-server-'))
  const as = owner()
  if (as.uid !== undefined) execFileSync('chown', [`${as.uid}:${as.gid}`, folder])
  chmodSync(folder, 0o700)
  const data = join(folder, 'data')
  const run = {
    ...as,
    cwd: folder,
    stdio: 'ignore' as const,
    env: { PATH: process.env.PATH, LC_ALL: 'C' },
  }
  execFileSync(
    join(programs, 'initdb'),
    ['-D', data, '-U', 'office', '-A', 'trust', '-E', 'UTF8', '--no-sync'],
    run,
  )
  writeFileSync(join(data, 'postgresql.auto.conf'), 'fsync = off\n', { flag: 'a' })
  const port = await freePort()
  const server = spawn(
    join(programs, 'postgres'),
    ['-D', data, '-p', String(port), '-c', 'listen_addresses=127.0.0.1', '-k', folder],
    run,
  )
  const ended = new Promise<void>((resolve) => server.once('exit', () => resolve()))
  await answering(programs, port, run)
  return {
    address: `postgres://office@127.0.0.1:${port}/postgres`,
    async stop() {
      server.kill('SIGINT')
      await ended
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

async function answering(programs: string, port: number, run: object): Promise<void> {
  for (let tries = 0; tries < 200; tries += 1) {
    try {
      execFileSync(join(programs, 'pg_isready'), ['-h', '127.0.0.1', '-p', String(port)], run)
      return
    } catch {
      await new Promise((resolve) => setTimeout(resolve, 100))
    }
  }
  throw new Error('the server does not answer')
}
