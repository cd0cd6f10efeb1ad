/**
 * Which folder may import what. `null` for `packages` allows any library that no other folder keeps
 * to itself (see `keptBy`).
 */
export interface Layer {
  readonly folder: string
  readonly folders: readonly string[]
  readonly packages: readonly string[] | null
  readonly node: boolean
  /** Told to whoever breaks the rule. */
  readonly why: string
}

const hostWhy = 'a host puts the parts together and calls the desk, and nothing imports a host'

/** A pure folder is given time and chance as arguments. */
export const pureFolders: readonly string[] = ['shared-types', 'electron/station']

export const layers: readonly Layer[] = [
  {
    folder: 'shared-types',
    folders: [],
    packages: ['zod'],
    node: false,
    why: 'it is what everyone else speaks, so it knows nobody and depends on zod alone',
  },
  {
    folder: 'db',
    folders: ['shared-types'],
    packages: null,
    node: true,
    why: 'it records what did happen; what should happen is decided above it',
  },
  {
    folder: 'electron/station',
    folders: ['shared-types'],
    packages: ['zod', '@stdlib'],
    node: false,
    why: 'a rule of the trade is given what it needs as arguments: no file, database or window',
  },
  {
    folder: 'electron/print',
    folders: ['shared-types'],
    packages: null,
    node: true,
    why: 'it turns plain data into a page; electron/desk looks the data up',
  },
  {
    folder: 'electron/desk',
    folders: ['shared-types', 'db', 'electron/station', 'electron/print'],
    packages: null,
    node: true,
    why: 'it runs the same under every host, so it knows none of them',
  },
  ...['electron/shell', 'electron/loopback', 'electron/cli'].map((folder) => ({
    folder,
    folders: ['shared-types', 'db', 'electron/desk'],
    packages: null,
    node: true,
    why: hostWhy,
  })),
  {
    folder: 'renderer',
    folders: ['shared-types'],
    packages: null,
    node: false,
    why: 'a screen shows and asks; if it needs a rule or a fact, it asks the desk',
  },
  {
    folder: 'build',
    folders: [],
    packages: null,
    node: true,
    why: 'build scripts start the program, they are no part of it',
  },
]

/** Libraries that one folder keeps to itself, so that what they stand for stays in one place. */
export const keptBy: Readonly<Record<string, string>> = {
  electron: 'electron/shell',
  kysely: 'db',
  'better-sqlite3': 'db',
  pdfkit: 'electron/print',
  'pdfjs-dist': 'electron/print',
  'bwip-js': 'electron/print',
  'dejavu-fonts-ttf': 'electron/print',
  commander: 'electron/cli',
  react: 'renderer',
  'react-dom': 'renderer',
  'react-aria-components': 'renderer',
  '@tanstack/react-query': 'renderer',
  signature_pad: 'renderer',
}
