/**
 * All that a window has of the desk. It runs in the sandbox and is built into one file; the page gets
 * two functions and nothing of Electron.
 */
import { contextBridge, type IpcRendererEvent, ipcRenderer } from 'electron'
import type { Bridge } from '../../shared-types/bridge.ts'
import { callChannel, changesChannel } from './channels.ts'

const bridge: Bridge = {
  call: (name, input) => ipcRenderer.invoke(callChannel, name, input),
  watch(listener) {
    // The event stays here: it holds the sender, and with it all of ipcRenderer.
    const hear = (_event: IpcRendererEvent, topics: string[]) => listener(topics)
    ipcRenderer.on(changesChannel, hear)
    return () => {
      ipcRenderer.off(changesChannel, hear)
    }
  },
}

contextBridge.exposeInMainWorld('duskline', bridge)
