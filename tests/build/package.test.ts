import { execFileSync } from 'node:child_process'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { Worker } from 'node:worker_threads'
import { extractFile, listPackage } from '@electron/asar'
import { FuseV1Options, getCurrentFuseWire } from '@electron/fuses'
import { beforeAll, describe, expect, test } from 'vitest'
import { packageConfig } from '../../build/package-config.ts'
import { root } from '../../build/steps.ts'
import { createLog } from '../../db/log/create.ts'
import { desk, tempFolder, value } from '../db/temp-log.ts'
import { standInRuntime } from './stand-in-runtime.ts'

const release = join(root, 'release/linux-unpacked')
const archive = join(release, 'resources/app.asar')
const unpacked = join(release, 'resources/app.asar.unpacked')

// The stand-in is for Linux; the other systems' packages are made on those systems.
describe.skipIf(process.platform !== 'linux')('the packaged program', () => {
  let listed: string[] = []

  beforeAll(() => {
    const args = [join(root, 'build/package.ts'), '--dir', '--electron', standInRuntime()]
    execFileSync(process.execPath, args, { cwd: root, stdio: 'pipe' })
    listed = listPackage(archive, { isPack: false }).map((path) => path.slice(1))
  }, 180_000)

  test.each([
    'package.json',
    'dist/main/main.js',
    'dist/main/aside-worker.js',
    'dist/main/merge-worker.js',
    'dist/main/look-worker.js',
    'dist/preload/preload.cjs',
    'dist/renderer/index.html',
    'node_modules/better-sqlite3/lib/index.js',
    'node_modules/pdfkit/js/pdfkit.js',
    'node_modules/dejavu-fonts-ttf/ttf/DejaVuSans.ttf',
  ])('holds %s', (file) => {
    expect(listed).toContain(file)
  })

  test('holds every file of the three bundles', () => {
    const built = ['main', 'preload', 'renderer'].flatMap((bundle) =>
      readdirSync(join(root, 'dist', bundle), { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile())
        .map(({ parentPath, name }) => join(parentPath, name).slice(root.length + 1)),
    )
    expect(listed).toEqual(expect.arrayContaining(built))
  })

  test.each([
    ['sources', /\.(ts|tsx|map)$/],
    ['folders of the repository', /^(electron|db|renderer|shared-types|tests|build|\.cache)\//],
    ['tests of packages', /\/(tests?|__tests__)\//],
    ['logs, keys or environments', /\.(stationlog|pem|key|p12|env)$|contact-keys|choices\.json/],
    [
      'what only builds it',
      /^node_modules\/(electron|vite|vitest|typescript|playwright-core|electron-builder)\//,
    ],
  ])('holds no %s', (_what, pattern) => {
    expect(listed.filter((file) => pattern.test(file))).toEqual([])
  })

  test('has the database library of this system, outside the archive where it can be loaded', () => {
    const prebuilds = readdirSync(join(unpacked, 'node_modules/better-sqlite3/prebuilds'))
    expect(prebuilds).toContain(`linux-${process.arch}.node`)
    expect(prebuilds.filter((name) => !name.startsWith('linux-'))).toEqual([])
  })

  test('starts with the main bundle and says which version it is', () => {
    const manifest = JSON.parse(extractFile(archive, 'package.json').toString()) as {
      main: string
      version: string
    }
    const own = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string }
    expect(manifest).toMatchObject({ main: 'dist/main/main.js', version: own.version })
  })

  test('has its fuses set, read back from the executable', async () => {
    const executable = join(release, 'duskline')
    const wire = await getCurrentFuseWire(executable)
    // As they stand in the executable: the characters 0 and 1.
    const [DISABLE, ENABLE] = ['0', '1'].map((state) => state.charCodeAt(0))
    expect(wire).toMatchObject({
      [FuseV1Options.RunAsNode]: DISABLE,
      [FuseV1Options.EnableCookieEncryption]: ENABLE,
      [FuseV1Options.EnableNodeOptionsEnvironmentVariable]: DISABLE,
      [FuseV1Options.EnableNodeCliInspectArguments]: DISABLE,
      [FuseV1Options.EnableEmbeddedAsarIntegrityValidation]: ENABLE,
      [FuseV1Options.OnlyLoadAppFromAsar]: ENABLE,
      [FuseV1Options.GrantFileProtocolExtraPrivileges]: DISABLE,
    })
  })

  test('is in the archive alone, with nothing loose beside it but native libraries', () => {
    expect(existsSync(join(release, 'resources/app'))).toBe(false)
    const loose = readdirSync(join(unpacked, 'node_modules')).toSorted()
    expect(loose).toEqual(['@napi-rs', 'better-sqlite3'])
  })

  test('brings the thread that makes backups, and it works from the bundle', async () => {
    const path = join(tempFolder(), 'a.stationlog')
    value(createLog(path, desk)).close()
    const worker = new Worker(join(root, 'dist/main/aside-worker.js'), {
      workerData: { do: 'verify', log: path },
    })
    const answer = await new Promise((resolve, reject) => {
      worker.once('message', resolve).once('error', reject)
    })
    expect(answer).toEqual({ ok: true, value: { whole: true, entries: 0 } })
  })
})

test('a station log opens with the program on every system', () => {
  expect(packageConfig.fileAssociations).toMatchObject([{ ext: 'stationlog', role: 'Editor' }])
})

test('the program has an icon of at least 512 by 512, which all systems’ icons are made from', () => {
  const png = readFileSync(join(root, 'build/icons/icon.png'))
  // Width and height in the IHDR chunk: Portable Network Graphics (W3C Recommendation), section 11.2.2.
  expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([512, 512])
})
