/** Where a screen lies on the disk. */
import { extname, isAbsolute, join, relative } from 'node:path'

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

export interface ScreenFile {
  readonly path: string
  readonly type: string
}

/**
 * The file that a request's path names, or `undefined` if it names none of ours.
 * A path begins with a slash, so it is joined below `root` as './...': resolved, it would start at the
 * root of the disk. And a neighbour `root-old` begins like `root`, so beginnings prove nothing.
 */
export function screenFile(root: string, pathname: string): ScreenFile | undefined {
  const decoded = decode(pathname)
  if (decoded === undefined) return undefined
  const path = join(root, `.${decoded === '/' ? '/index.html' : decoded}`)
  const inside = relative(root, path)
  const type = screenTypes[extname(path)]
  if (inside.startsWith('..') || isAbsolute(inside) || type === undefined) return undefined
  return { path, type }
}

function decode(pathname: string): string | undefined {
  try {
    return decodeURIComponent(pathname)
  } catch {
    return undefined
  }
}
