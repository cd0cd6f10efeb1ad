import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, test, vi } from 'vitest'
import { contentPolicy as loopbackPolicy } from '../../electron/loopback/answer.ts'
import { screenTypes as loopbackTypes } from '../../electron/loopback/screens.ts'
import { answerScreen, contentPolicy } from '../../electron/shell/app-protocol.ts'
import { screenFile, screenTypes } from '../../electron/shell/screen-file.ts'

vi.mock('electron', () => ({ protocol: {} }))

const folder = mkdtempSync(join(tmpdir(), 'duskline-screens-'))
const root = join(folder, 'renderer')
for (const each of ['renderer/assets', 'renderer-old'])
  mkdirSync(join(folder, each), { recursive: true })
writeFileSync(join(root, 'index.html'), '<!doctype html><title>Desk</title>')
writeFileSync(join(root, 'assets/desk.js'), 'export {}')
writeFileSync(join(root, 'notes.md'), 'not a screen')
writeFileSync(join(folder, 'renderer-old/desk.js'), 'stale')
writeFileSync(join(folder, 'secret.js'), 'secret')

const get = (url: string, method = 'GET') => answerScreen(root, { method, url })

describe('a screen', () => {
  test('is found at its path, the page itself at the root', async () => {
    const page = await get('app://duskline/?board=1#line')
    expect(await page.text()).toContain('<title>Desk</title>')
    expect(page.headers.get('Content-Type')).toBe('text/html; charset=utf-8')
    expect(await (await get('app://duskline/assets/desk.js')).text()).toBe('export {}')
  })

  test.each([
    'app://duskline/../secret.js',
    'app://duskline/%2e%2e/secret.js',
    'app://duskline/..%2fsecret.js',
    'app://duskline/assets/..%2f..%2fsecret.js',
    'app://duskline/..%2frenderer-old%2fdesk.js',
    'app://duskline/%2fetc%2fpasswd',
    'app://duskline/notes.md',
    'app://duskline/assets',
    'app://duskline/none.js',
    'app://duskline/assets/desk.js%00.html',
    'app://duskline/%zz.js',
    'app://evil.example/assets/desk.js',
    'app://duskline.evil.example/assets/desk.js',
    'app:///assets/desk.js',
  ])('is not found at %s', async (url) => {
    expect((await get(url)).status).toBe(404)
  })

  test('is only to be read', async () => {
    expect((await get('app://duskline/', 'POST')).status).toBe(405)
  })

  test.each(['app://duskline/', 'app://duskline/none.js'])(
    'and a refusal alike carry the guarding headers: %s',
    async (url) => {
      const { headers } = await get(url)
      expect(headers.get('Content-Security-Policy')).toBe(contentPolicy)
      expect(headers.get('X-Content-Type-Options')).toBe('nosniff')
    },
  )
})

describe('the file of a path', () => {
  test.each(['/../renderer-old/desk.js', '/../secret.js', '/..', '/../../../../etc/x.js'])(
    'never lies beside the screens: %s',
    (path) => {
      expect(screenFile(root, path)).toBeUndefined()
    },
  )
})

describe('both windows', () => {
  test('give out the same kinds of file', () => {
    expect(screenTypes).toEqual(loopbackTypes)
  })

  test('allow the screens the same, but that Electron’s may connect to nothing', () => {
    expect(contentPolicy).toBe(loopbackPolicy.replace("connect-src 'self'", "connect-src 'none'"))
    expect(contentPolicy).not.toMatch(/unsafe|\*|https?:/)
  })
})
