/**
 * The menu. It has no way to reload or to open the developer tools: both are one slip of the hand
 * away from a half-typed check-in that is gone.
 */
import { Menu, type MenuItemConstructorOptions } from 'electron'

/** What the menu can do beyond what Electron brings. */
export interface MenuDeeds {
  readonly openWindow: () => void
  readonly openBoard: () => void
  readonly pickBackupFolder: () => void
  readonly pickLogsFolder: () => void
}

/** The entries of the menu, by platform. */
export function menuTemplate(
  platform: NodeJS.Platform,
  { openWindow, openBoard, pickBackupFolder, pickLogsFolder }: MenuDeeds,
): MenuItemConstructorOptions[] {
  const quit: MenuItemConstructorOptions = { role: 'quit' }
  return [
    ...(platform === 'darwin' ? [{ label: 'Duskline', submenu: [quit] }] : []),
    {
      label: '&File',
      submenu: [
        { label: 'New window', accelerator: 'CommandOrControl+N', click: openWindow },
        {
          label: 'Board for a screen outside',
          accelerator: 'CommandOrControl+B',
          click: openBoard,
        },
        { type: 'separator' },
        { label: 'Offer a folder for backups…', click: pickBackupFolder },
        { label: 'Offer a folder of logs to merge…', click: pickLogsFolder },
        { type: 'separator' },
        { role: 'close' },
        ...(platform === 'darwin' ? [] : [quit]),
      ],
    },
    {
      label: '&Edit',
      submenu: [
        { role: 'undo' },
        { role: 'redo' },
        { role: 'cut' },
        { role: 'copy' },
        { role: 'paste' },
        { role: 'selectAll' },
      ],
    },
    {
      label: '&View',
      submenu: [
        { role: 'zoomIn' },
        { role: 'zoomOut' },
        { role: 'resetZoom' },
        { role: 'togglefullscreen' },
      ],
    },
  ]
}

export function setMenu(deeds: MenuDeeds): void {
  Menu.setApplicationMenu(Menu.buildFromTemplate(menuTemplate(process.platform, deeds)))
}
