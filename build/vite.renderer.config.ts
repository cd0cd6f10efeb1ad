import { join } from 'node:path'
import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'

/** The screens: one page that both the Electron window and the loopback server hand out. */
export default defineConfig({
  root: join(import.meta.dirname, '../renderer'),
  cacheDir: join(import.meta.dirname, '../.cache/vite'),
  plugins: [react()],
  logLevel: 'warn',
  build: {
    outDir: join(import.meta.dirname, '../dist/renderer'),
    emptyOutDir: true,
    // The content security policy allows no data: or inline parts, so nothing is inlined.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // Read from the disk beside it, never over a network: one large file does no harm.
    chunkSizeWarningLimit: 2000,
  },
})
