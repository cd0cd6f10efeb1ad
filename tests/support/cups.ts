/**
 * The system's own printing system (CUPS) with its PDF printer, of the system's own packages, run for
 * one file of tests. The programs that print find it at one place only, so it is started only where
 * nobody else's is there, by root, whom its PDF printer asks for.
 */
import { execFileSync, spawn } from 'node:child_process'
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

const server = '/usr/sbin/cupsd'
const socket = '/run/cups/cups.sock'
const driver = '/usr/share/ppd/cups-pdf/CUPS-PDF_noopt.ppd'

/** Why it cannot be started here; null where it can. */
export function cupsMissing(): string | null {
  if (![server, driver, '/usr/lib/cups/backend/cups-pdf'].every((file) => existsSync(file)))
    return 'the packages cups and printer-driver-cups-pdf are not installed'
  if (process.getuid?.() !== 0) return 'only root can run its PDF printer'
  return existsSync(socket) ? 'another printing system runs here' : null
}

export interface RunningCups {
  /** Sets up a PDF printer of that name. */
  readonly addPrinter: (name: string) => void
  readonly removePrinter: (name: string) => void
  /** No job comes out until it is let go. */
  readonly hold: (name: string) => void
  readonly letGo: (name: string) => void
  /** What has come out, in the order of the jobs. */
  readonly printed: () => Uint8Array[]
  readonly stop: () => Promise<void>
}

function write(folder: string): void {
  const everyone = 'Order allow,deny\nAllow all\n'
  writeFileSync(
    join(folder, 'etc/cupsd.conf'),
    `LogLevel warn\nListen ${socket}\nBrowsing No\nDefaultAuthType None\nWebInterface No
<Location />\n${everyone}</Location>\n<Location /admin>\n${everyone}</Location>
<Policy default>\n<Limit All>\nOrder deny,allow\n</Limit>\n</Policy>\n`,
  )
  writeFileSync(
    join(folder, 'etc/cups-files.conf'),
    `ServerRoot ${folder}/etc\nRequestRoot ${folder}/spool\nTempDir ${folder}/spool/tmp
CacheDir ${folder}/cache\nStateDir ${folder}/state\nErrorLog ${folder}/log/error
AccessLog ${folder}/log/access\nPageLog ${folder}/log/page\nPrintcap\nSystemGroup root\n`,
  )
}

/** Its PDF printer reads its settings from there and nowhere else. */
const settingsOf = (queue: string) => `/etc/cups/cups-pdf-${queue}.conf`

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms))
}

function run(program: string, ...args: string[]): void {
  execFileSync(program, args, { stdio: 'ignore', timeout: 20_000 })
}

export async function startCups(): Promise<RunningCups> {
  const folder = mkdtempSync(join(tmpdir(), 'duskline-cups-'))
  for (const each of ['etc/ppd', 'spool/tmp', 'spool/pdf', 'cache', 'state', 'log', 'out'])
    mkdirSync(join(folder, each), { recursive: true })
  chmodSync(folder, 0o755)
  write(folder)
  const isOurs = !existsSync('/run/cups')
  mkdirSync('/run/cups', { recursive: true })
  const queue = `duskline${process.pid}`
  const out = join(folder, 'out')
  writeFileSync(
    settingsOf(queue),
    `Out ${out}\nAnonDirName ${out}\nLog ${folder}/log\nSpool ${folder}/spool/pdf\nLabel 1\n`,
  )
  const files = ['-c', join(folder, 'etc/cupsd.conf'), '-s', join(folder, 'etc/cups-files.conf')]
  const cups = spawn(server, ['-f', ...files], { stdio: 'ignore' })
  const ended = new Promise<void>((resolve) => cups.once('exit', () => resolve()))
  for (let tries = 0; tries < 100 && !existsSync(socket); tries += 1) await pause(100)
  return {
    addPrinter: (name) =>
      run('lpadmin', '-p', name, '-E', '-v', `cups-pdf:/${queue}`, '-P', driver),
    removePrinter: (name) => run('lpadmin', '-x', name),
    hold: (name) => run('cupsdisable', name),
    letGo: (name) => run('cupsenable', name),
    printed: () =>
      readdirSync(out)
        .filter((name) => name.endsWith('.pdf'))
        .toSorted((a, b) => a.localeCompare(b, 'en', { numeric: true }))
        .map((name) => new Uint8Array(readFileSync(join(out, name)))),
    async stop() {
      cups.kill('SIGTERM')
      await ended
      rmSync(settingsOf(queue), { force: true })
      rmSync(folder, { recursive: true, force: true })
      rmSync(isOurs ? '/run/cups' : socket, { recursive: true, force: true })
    },
  }
}
