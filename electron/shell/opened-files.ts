/** Files that macOS hands to the program; other systems name them on its command line. */
import { app } from 'electron'

export interface OpenedFiles {
  /** Those handed over before the program was ready. */
  readonly paths: readonly string[]
  /** Told of one that comes while the program runs: its log is not changed for another under a person's hands. */
  readonly onLater: (listener: () => void) => void
}

/** Listens from now on. */
export function openedFiles(): OpenedFiles {
  const paths: string[] = []
  let onLater = () => {}
  app.on('open-file', (event, path) => {
    event.preventDefault()
    paths.push(path)
    onLater()
  })
  return {
    paths,
    onLater: (listener) => {
      onLater = listener
    },
  }
}
