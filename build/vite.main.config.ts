import { join } from 'node:path'
import { defineConfig } from 'vite'

/**
 * The main process, and beside it the threads for what would hold it up. Left outside: Electron itself, the database library with its
 * native part, and what reads its own files (fonts, a program that prints) from beside its code.
 */
export default defineConfig({
  root: join(import.meta.dirname, '..'),
  cacheDir: join(import.meta.dirname, '../.cache/vite'),
  publicDir: false,
  logLevel: 'warn',
  ssr: {
    noExternal: true,
    external: [
      'electron',
      'better-sqlite3',
      'pdfkit',
      'dejavu-fonts-ttf',
      'pdfjs-dist',
      'unix-print',
      'pdf-to-printer',
    ],
  },
  build: {
    ssr: true,
    outDir: join(import.meta.dirname, '../dist/main'),
    emptyOutDir: true,
    target: 'node24',
    minify: false,
    rolldownOptions: {
      input: {
        main: join(import.meta.dirname, '../electron/shell/main.ts'),
        'aside-worker': join(import.meta.dirname, '../db/aside-worker.ts'),
        'merge-worker': join(import.meta.dirname, '../db/merge/merge-worker.ts'),
        'look-worker': join(import.meta.dirname, '../electron/desk/look-worker.ts'),
      },
      output: { entryFileNames: '[name].js', chunkFileNames: '[name].js' },
    },
  },
})
