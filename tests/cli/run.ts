/** The command line as a person uses it: a process of its own. */
import { execFile } from 'node:child_process'
import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { z } from 'zod'
import { Refusal } from '../../shared-types/result.ts'

export const root = join(import.meta.dirname, '../..')
const main = join(root, 'electron/cli/main.ts')

export interface Run {
  readonly code: number | null
  readonly out: string
  readonly err: string
}

/** Runs a program to its end; never rejects for its exit code. */
export function run(program: string, args: readonly string[], cwd = root): Promise<Run> {
  const options = { cwd, maxBuffer: 64 << 20, shell: process.platform === 'win32' }
  return new Promise((ended) => {
    const child = execFile(program, args, options, (_, out, err) =>
      ended({ code: child.exitCode, out, err }),
    )
  })
}

export function duskline(...args: string[]): Promise<Run> {
  return run(process.execPath, [main, ...args])
}

const Envelope = z.strictObject({
  ok: z.boolean(),
  value: z.unknown().optional(),
  refusal: Refusal.optional(),
})

/** The one JSON value on stdout. */
export function answer({ out }: Run) {
  return Envelope.parse(JSON.parse(out))
}

export function digest(path: string): string {
  return createHash('sha256').update(readFileSync(path)).digest('hex')
}
