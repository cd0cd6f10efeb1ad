import type { MenuItemConstructorOptions } from 'electron'
import { describe, expect, test, vi } from 'vitest'
import { menuTemplate } from '../../electron/shell/menu.ts'

vi.mock('electron', () => ({ Menu: {} }))

const deeds = { openWindow() {}, openBoard() {}, pickBackupFolder() {}, pickLogsFolder() {} }

function itemsOf(platform: NodeJS.Platform): MenuItemConstructorOptions[] {
  return menuTemplate(platform, deeds).flatMap(({ submenu }) =>
    Array.isArray(submenu) ? submenu : [],
  )
}

describe.each(['linux', 'win32', 'darwin'] as const)('the menu on %s', (platform) => {
  const roles = itemsOf(platform).map(({ role }) => role)

  test.each(['reload', 'forceReload', 'toggleDevTools', 'viewMenu'])(
    'has no %s, which would lose what is half typed',
    (role) => {
      expect(roles).not.toContain(role)
    },
  )

  test('can copy and paste, make things larger, and quit', () => {
    expect(roles).toEqual(expect.arrayContaining(['copy', 'paste', 'zoomIn', 'quit']))
    expect(roles.filter((role) => role === 'quit')).toHaveLength(1)
  })
})
