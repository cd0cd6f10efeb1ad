import type { Configuration } from 'electron-builder'

const prebuilds = [
  'darwin-arm64',
  'darwin-x64',
  'linux-arm64',
  'linux-x64',
  'linuxmusl-arm64',
  'linuxmusl-x64',
  'win32-arm64',
  'win32-x64',
]

/** Every prebuilt database library but those of this system: each is two megabytes of dead weight. */
const otherPrebuilds = prebuilds
  .filter((name) => !name.startsWith(`${process.platform}-`))
  .map((name) => `!node_modules/better-sqlite3/prebuilds/${name}.node`)

/** What prints on Windows carries a program for it, thirteen megabytes that no other system runs. */
const otherPrinting = process.platform === 'win32' ? [] : ['!node_modules/pdf-to-printer/**']

/** The three bundles, and of the packages beside them only what runs. */
const files = [
  'dist/main/**',
  'dist/preload/**',
  'dist/renderer/**',
  'package.json',
  '!**/*.{map,ts,md,markdown,tsbuildinfo}',
  '!**/{test,tests,__tests__,example,examples,docs,benchmark}/**',
  '!node_modules/better-sqlite3/{src,deps,binding.gyp}',
  '!node_modules/better-sqlite3/{src,deps}/**',
  '!node_modules/node-addon-api/**',
  // Electron is its own Node.
  '!node_modules/node-{linux,win}-x64/**',
  '!node_modules/pdfjs-dist/{build,web,cmaps,image_decoders,types}/**',
  '!node_modules/.bin/**',
  // Here and not under each system: a list of exclusions alone is taken to begin with everything.
  ...otherPrebuilds,
  ...otherPrinting,
]

/**
 * What is taken out of Electron when it is packaged (electronjs.org/docs/latest/tutorial/fuses): it
 * cannot be run as a plain Node or be debugged, loads this program only, and only unaltered.
 */
export const fuses = {
  runAsNode: false,
  enableNodeOptionsEnvironmentVariable: false,
  enableNodeCliInspectArguments: false,
  enableCookieEncryption: true,
  enableEmbeddedAsarIntegrityValidation: true,
  onlyLoadAppFromAsar: true,
  grantFileProtocolExtraPrivileges: false,
} as const

/** How the program becomes an installer. `npm run package` makes one for the system it runs on. */
export const packageConfig: Configuration = {
  appId: 'org.duskline.desk',
  productName: 'Duskline',
  copyright: 'MIT licence',
  directories: { output: 'release', buildResources: 'build/icons' },
  files,
  asar: true,
  // A native library is loaded by the system itself, which cannot look into the archive.
  asarUnpack: ['node_modules/better-sqlite3/prebuilds/*.node'],
  // The library comes built, for Node and Electron alike (Node-API).
  npmRebuild: false,
  electronFuses: fuses,
  fileAssociations: [
    {
      ext: 'stationlog',
      name: 'Station log',
      description: 'The record of one desk of a check station',
      mimeType: 'application/x-stationlog',
      role: 'Editor',
    },
  ],
  linux: {
    target: ['AppImage', 'deb'],
    category: 'Office',
    synopsis: 'The desk of a wildlife check station',
  },
  deb: { maintainer: 'Duskline <desk@duskline.example>' },
  win: { target: ['nsis'] },
  nsis: {
    oneClick: false,
    allowToChangeInstallationDirectory: true,
    // The logs are the station's, not the program's.
    deleteAppDataOnUninstall: false,
  },
  mac: {
    target: ['dmg'],
    category: 'public.app-category.productivity',
    hardenedRuntime: true,
  },
  // Stations have no network: an installer comes on a stick, and is checked by its signature.
  publish: null,
}
