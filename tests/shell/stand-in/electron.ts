/**
 * Stands where the `electron` module would be: the shell's real main runs against it, its real preload
 * runs in the pages, and its windows are pages of a real Chromium. It shows what the shell does with
 * Electron's interface, not what Electron does with the shell. What differs: the preload shares the
 * page's world, and a window that may not open is opened unseen and closed again.
 */
import { EventEmitter } from 'node:events'
import { readFileSync } from 'node:fs'
import type { BrowserWindowConstructorOptions, MenuItemConstructorOptions } from 'electron'
import { openContents, startRuntime, stopRuntime } from './runtime.ts'
import { defaultSession } from './session.ts'
import { CancellableEvent, type WebContents } from './web-contents.ts'

export { ipcMain } from './ipc-main.ts'
export { protocol } from './protocol.ts'

/** What a test sets before the program starts, and sees afterwards. */
export const machine = {
  appPath: '',
  userData: '',
  isFirstInstance: true,
  sandboxed: false,
  exitCode: undefined as number | undefined,
  errors: [] as string[],
  menu: [] as MenuItemConstructorOptions[],
  windows: [] as BrowserWindow[],
  /** What the person picks in the dialog for a folder; undefined closes it. */
  picksFolder: undefined as string | undefined,
  /** Reasons why the laptop may not sleep now. */
  keptAwake: new Set<number>(),
}

class App extends EventEmitter {
  enableSandbox(): void {
    machine.sandboxed = true
  }
  requestSingleInstanceLock(): boolean {
    return machine.isFirstInstance
  }
  whenReady(): Promise<void> {
    return startRuntime()
  }
  getAppPath(): string {
    return machine.appPath
  }
  getPath(): string {
    return machine.userData
  }
  getVersion(): string {
    return '0.0.0'
  }
  quit(): void {
    const quitting = new CancellableEvent()
    this.emit('will-quit', quitting)
    if (!quitting.prevented) this.exit()
  }
  exit(code = 0): void {
    machine.exitCode = code
    void stopRuntime()
  }
}
export const app = new App()

export class BrowserWindow extends EventEmitter {
  readonly options: BrowserWindowConstructorOptions
  readonly webContents: WebContents
  shown = false
  focused = 0
  private maximized = false

  constructor(options: BrowserWindowConstructorOptions) {
    super()
    this.options = options
    const preload = options.webPreferences?.preload
    this.webContents = openContents(preload && readFileSync(preload, 'utf8'))
    machine.windows.push(this)
    app.emit('web-contents-created', {}, this.webContents)
    void this.webContents.ready.then((page) => page.once('close', () => this.leave()))
  }

  private leave(): void {
    machine.windows.splice(machine.windows.indexOf(this), 1)
    this.emit('closed')
    if (machine.windows.length === 0) app.emit('window-all-closed')
  }

  async loadURL(url: string): Promise<void> {
    await this.webContents.load(url)
    this.emit('ready-to-show')
  }
  show(): void {
    this.shown = true
  }
  focus(): void {
    this.focused += 1
  }
  isMinimized(): boolean {
    return false
  }
  maximize(): void {
    this.maximized = true
  }
  isMaximized(): boolean {
    return this.maximized
  }
  getNormalBounds() {
    const { x = 0, y = 0, width = 0, height = 0 } = this.options
    return { x, y, width, height }
  }
  close(): void {
    this.emit('close')
    void this.webContents.page?.close()
  }
}

export const session = { defaultSession }

export const dialog = {
  showErrorBox: (title: string, say: string) => {
    machine.errors.push(`${title}: ${say}`)
  },
  showOpenDialog: async () => ({
    canceled: machine.picksFolder === undefined,
    filePaths: machine.picksFolder === undefined ? [] : [machine.picksFolder],
  }),
}

export const screen = {
  getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1366, height: 728 } }],
}

export const powerSaveBlocker = {
  start: () => {
    const id = machine.keptAwake.size + 1
    machine.keptAwake.add(id)
    return id
  },
  stop: (id: number) => machine.keptAwake.delete(id),
}

/** A key store that turns the bytes over: enough to see that what is kept is not what was given. */
export const safeStorage = {
  isEncryptionAvailable: () => true,
  getSelectedStorageBackend: () => 'gnome_libsecret',
  encryptString: (text: string) => Buffer.from(text).map((byte) => byte ^ 0x5a),
  decryptString: (sealed: Buffer) => Buffer.from(sealed.map((byte) => byte ^ 0x5a)).toString(),
}

export const Menu = {
  buildFromTemplate: (template: MenuItemConstructorOptions[]) => template,
  setApplicationMenu: (template: MenuItemConstructorOptions[]) => {
    machine.menu = template
  },
}
