import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { findBrowser, programOnPath, thisMachine } from './browser.ts'

/** A program from outside npm, and the Debian package that brings it. */
export interface SystemProgram {
  readonly debian: string
  readonly isHere: () => boolean
  /** What goes without it. */
  readonly without: string
}

export const onPath = (name: string) => () => programOnPath(name, thisMachine) !== undefined

/** The browser that the screens are shown and tested in. */
export const browser: SystemProgram = {
  debian: 'chromium',
  isHere: () => findBrowser() !== undefined,
  without: 'the browser tests are skipped',
}

/** Readers that did not draw the labels, to check the printed page with. */
export const labelReaders: readonly SystemProgram[] = [
  { debian: 'poppler-utils', isHere: onPath('pdftotext'), without: 'PDF text is not read back' },
  { debian: 'zbar-tools', isHere: onPath('zbarimg'), without: 'bar codes have one reader less' },
  {
    debian: 'dmtx-utils',
    isHere: onPath('dmtxread'),
    without: 'matrix codes have one reader less',
  },
]

/** A printing system with a printer that prints into files, to print labels on for real. */
export const printing: readonly SystemProgram[] = [
  {
    debian: 'cups',
    isHere: () => existsSync('/usr/sbin/cupsd'),
    without: 'no label is printed for real',
  },
  {
    debian: 'printer-driver-cups-pdf',
    isHere: () => existsSync('/usr/lib/cups/backend/cups-pdf'),
    without: 'no label is printed for real',
  },
]

function canInstall(): boolean {
  return process.getuid?.() === 0 && programOnPath('apt-get', thisMachine) !== undefined
}

function aptGet(args: readonly string[]): boolean {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
  // apt's long story goes to stderr and only when it fails.
  const { status, stderr } = spawnSync('apt-get', ['-qq', ...args], { env, encoding: 'utf8' })
  if (status !== 0) console.error(stderr)
  return status === 0
}

/** Brings what is missing where that is possible, else says in one line each what to install. */
export function bringMissing(programs: readonly SystemProgram[]): void {
  const missing = programs.filter((program) => !program.isHere())
  if (missing.length > 0 && canInstall()) {
    const names = missing.map((program) => program.debian)
    console.error(`Installing ${names.join(', ')} ...`)
    if (aptGet(['update'])) aptGet(['install', '-y', ...names])
  }
  for (const { debian, without } of missing.filter((program) => !program.isHere())) {
    console.error(
      `Not found: ${debian}. Install it with your system's packages; until then ${without}.`,
    )
  }
}
