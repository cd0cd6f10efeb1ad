import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { build } from 'vite'

/** A bundle that Vite makes, and all that it is made from. Paths are relative to the root. */
export interface Bundle {
  readonly name: 'renderer' | 'preload' | 'main'
  readonly config: string
  readonly output: string
  /** Files and folders; a change in any of them makes the bundle stale. */
  readonly sources: readonly string[]
}

/** The screens: all that a browser window needs. */
export const screens: Bundle = {
  name: 'renderer',
  config: 'build/vite.renderer.config.ts',
  output: 'dist/renderer/index.html',
  sources: ['renderer', 'shared-types'],
}

/** What the Electron window needs besides. */
export const shell: readonly Bundle[] = [
  {
    name: 'preload',
    config: 'build/vite.preload.config.ts',
    output: 'dist/preload/preload.cjs',
    sources: ['electron/shell', 'shared-types'],
  },
  {
    name: 'main',
    config: 'build/vite.main.config.ts',
    output: 'dist/main/main.js',
    sources: ['electron', 'db', 'shared-types'],
  },
]

export const everyBundle: readonly Bundle[] = [screens, ...shell]

function filesIn(path: string): string[] {
  const entries = readdirSync(path, { recursive: true, withFileTypes: true })
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
}

/**
 * A digest of everything that went into a bundle. Contents rather than dates: git and copying set
 * dates of their own, and a file taken away leaves none.
 */
export function fingerprint(root: string, { config, sources }: Bundle): string {
  const hash = createHash('sha256')
  const files = sources.flatMap((source) => filesIn(join(root, source)))
  for (const file of [...files.sort(), join(root, config), join(root, 'package-lock.json')]) {
    hash.update(file.slice(root.length)).update('\0').update(readFileSync(file)).update('\0')
  }
  return hash.digest('hex')
}

const markOf = (root: string, { name }: Bundle) => join(root, '.cache', 'built', name)

/** Whether a bundle is missing or was made from other sources than are here now. */
export function isStale(root: string, bundle: Bundle): boolean {
  const mark = markOf(root, bundle)
  if (!existsSync(mark) || !existsSync(join(root, bundle.output))) return true
  return readFileSync(mark, 'utf8') !== fingerprint(root, bundle)
}

/** Notes that a bundle was made from what `print` digests. */
export function markBuilt(root: string, bundle: Bundle, print: string): void {
  const mark = markOf(root, bundle)
  mkdirSync(dirname(mark), { recursive: true })
  writeFileSync(mark, print)
}

/** Builds those of the bundles that are stale, one after another. */
export async function buildStale(root: string, bundles: readonly Bundle[]): Promise<void> {
  for (const bundle of bundles) {
    if (!isStale(root, bundle)) continue
    console.error(`Building ${bundle.name} ...`)
    const print = fingerprint(root, bundle)
    await build({ configFile: join(root, bundle.config), mode: 'production' })
    markBuilt(root, bundle, print)
  }
}
