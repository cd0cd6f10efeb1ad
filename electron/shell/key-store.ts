/** The operating system's key store, through Electron. */
import { safeStorage } from 'electron'
import type { KeyStore } from '../desk/machine.ts'

/** On Linux without a key ring Electron would seal under a password that is in its source. */
const sealsNothing = ['basic_text', 'unknown']

/** The key store of this laptop, or undefined where there is none worth the name. */
export function keyStore(): KeyStore | undefined {
  if (!safeStorage.isEncryptionAvailable()) return undefined
  if (
    process.platform === 'linux' &&
    sealsNothing.includes(safeStorage.getSelectedStorageBackend())
  )
    return undefined
  return {
    seal: (text) => safeStorage.encryptString(text),
    open: (sealed) => safeStorage.decryptString(Buffer.from(sealed)),
  }
}
