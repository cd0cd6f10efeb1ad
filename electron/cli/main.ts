/**
 * The desk from a terminal: `npm run --silent duskline -- VERB`. Exit 0: done; 1: refused, with the
 * sentence on stderr; 2: not understood. The composition root of this host.
 */
import { CommanderError } from 'commander'
import { tell } from './outcome.ts'
import { createProgram } from './program.ts'
import { createProgress } from './progress.ts'

/** npm runs scripts in the project's folder; a person's paths are meant from where they stood. */
function whereThePersonStands(): string {
  const { npm_lifecycle_event: script, INIT_CWD: stood } = process.env
  return script === 'duskline' && stood ? stood : process.cwd()
}

async function main(): Promise<void> {
  const voice = {
    out: (text: string) => void process.stdout.write(text),
    err: (text: string) => void process.stderr.write(text),
  }
  const program = createProgram({
    cwd: whereThePersonStands(),
    progress: createProgress(process.stderr),
    end: (outcome, json) => {
      process.exitCode = tell(outcome, json, voice)
    },
  })
  try {
    await program.parseAsync()
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error
    // Whoever asked for help has got it; anything else commander says is a wrong call.
    process.exitCode = error.exitCode === 0 ? 0 : 2
  }
}

// Whoever reads a part of a long list and goes away is no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error
})
await main()
