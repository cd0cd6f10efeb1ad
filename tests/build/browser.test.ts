import { describe, expect, test } from 'vitest'
import { findBrowser } from '../../build/browser.ts'

function search(platform: NodeJS.Platform, env: NodeJS.ProcessEnv, ...programs: string[]) {
  return findBrowser({ platform, env, isProgram: (path) => programs.includes(path) })
}

describe('the browser to show the screens in', () => {
  test('is the one a person names in CHROME_PATH', () => {
    const env = { CHROME_PATH: '/opt/own', PATH: '/usr/bin' }
    expect(search('linux', env, '/opt/own', '/usr/bin/chromium')).toBe('/opt/own')
  })

  test('is another when the named one is not there', () => {
    const env = { CHROME_PATH: '/opt/own', PATH: '/usr/bin' }
    expect(search('linux', env, '/usr/bin/chromium')).toBe('/usr/bin/chromium')
  })

  test('is found along PATH, then in the usual places', () => {
    const chrome = '/usr/bin/google-chrome'
    expect(search('linux', { PATH: '/a:/b' }, '/b/chromium', chrome)).toBe('/b/chromium')
    expect(search('linux', { PATH: '/a:/b' }, chrome)).toBe(chrome)
  })

  test('is Chrome or Edge on Windows', () => {
    const edge = 'C:\\Programs\\Microsoft\\Edge\\Application\\msedge.exe'
    const chrome = 'C:\\Programs\\Google\\Chrome\\Application\\chrome.exe'
    const env = { PROGRAMFILES: 'C:\\Programs' }
    expect(search('win32', env, edge)).toBe(edge)
    expect(search('win32', env, edge, chrome)).toBe(chrome)
  })

  test('is none on a machine without one', () => {
    expect(search('linux', { PATH: '/usr/bin' })).toBeUndefined()
  })
})
