/**
 * The built screens. All are read once, at start, and found by name in a list: a path that leads out
 * of the folder is simply not on it.
 */
import { readdir, readFile } from 'node:fs/promises'
import { extname, join, relative, sep } from 'node:path'

export interface Screen {
  readonly type: string
  readonly body: Buffer
}

/** By request path, e.g. `/assets/index-3f.js`. */
export type Screens = ReadonlyMap<string, Screen>

/** What the screens are made of; a file of any other kind is not given out. */
export const screenTypes: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
}

/** Reads the screens that `folder` holds. Throws one plain sentence if they are not there. */
export async function readScreens(folder: string): Promise<Screens> {
  const found = await readdir(folder, { recursive: true, withFileTypes: true }).catch(() => [])
  const files = found
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
  const screens = new Map<string, Screen>()
  for (const file of files) {
    const type = screenTypes[extname(file)]
    if (type === undefined) continue
    screens.set(`/${relative(folder, file).split(sep).join('/')}`, {
      type,
      body: await readFile(file),
    })
  }
  const index = screens.get('/index.html')
  if (index === undefined)
    throw new Error(`The screens are not built: there is no index.html in ${folder}.`)
  return screens.set('/', index)
}
