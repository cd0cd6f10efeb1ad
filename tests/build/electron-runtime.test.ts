import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { findElectron } from '../../build/electron-runtime.ts'
import { plantTree } from './planted-tree.ts'

const manifest = { 'package.json': '{"version":"45.4.1"}' }
const linux = { platform: 'linux' as const, env: {} }

describe('the Electron runtime is found', () => {
  test('when its package has fetched it', () => {
    const folder = plantTree({ ...manifest, 'dist/version': '45.4.1', 'dist/electron': '' })
    expect(findElectron(folder, linux)).toBe(join(folder, 'dist/electron'))
  })

  test('in the folder a person names instead', () => {
    const folder = plantTree({ 'electron.exe': '' })
    const windows = { platform: 'win32' as const, env: { ELECTRON_OVERRIDE_DIST_PATH: folder } }
    expect(findElectron(plantTree(manifest), windows)).toBe(join(folder, 'electron.exe'))
  })
})

describe('the Electron runtime is not found, and nothing is fetched,', () => {
  test('when only its package is here', () => {
    expect(findElectron(plantTree(manifest), linux)).toBeUndefined()
  })

  test('when what was fetched is of another version', () => {
    const folder = plantTree({ ...manifest, 'dist/version': '44.0.0', 'dist/electron': '' })
    expect(findElectron(folder, linux)).toBeUndefined()
  })

  test('when fetching broke off before the program was there', () => {
    const folder = plantTree({ ...manifest, 'dist/version': '45.4.1' })
    expect(findElectron(folder, linux)).toBeUndefined()
  })
})
