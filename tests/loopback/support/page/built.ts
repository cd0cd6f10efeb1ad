/** The page of this folder, built as the screens are. */
import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { build } from 'vite'

/** Builds into a fresh folder and answers it. */
export async function buildNotebookPage(): Promise<string> {
  const outDir = mkdtempSync(join(tmpdir(), 'duskline-page-'))
  await build({
    configFile: false,
    root: import.meta.dirname,
    logLevel: 'warn',
    build: { outDir, emptyOutDir: true, assetsInlineLimit: 0, modulePreload: { polyfill: false } },
  })
  return outDir
}
