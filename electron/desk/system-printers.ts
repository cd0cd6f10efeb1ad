/** The printers of the operating system that this runs on. */
import type { Printers } from '../print/printers.ts'

/** Loaded when it is asked for: each library knows only its own system. */
export async function systemPrinters(platform: NodeJS.Platform): Promise<Printers> {
  if (platform === 'win32') return (await import('../print/windows-printers.ts')).windowsPrinters
  return (await import('../print/unix-printers.ts')).unixPrinters
}
