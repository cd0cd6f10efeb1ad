import { join } from 'node:path'
import { defineConfig } from 'vite'

/** A sandboxed preload may neither be a module nor require its neighbours: one CommonJS file. */
export default defineConfig({
  root: join(import.meta.dirname, '..'),
  cacheDir: join(import.meta.dirname, '../.cache/vite'),
  publicDir: false,
  logLevel: 'warn',
  build: {
    outDir: join(import.meta.dirname, '../dist/preload'),
    emptyOutDir: true,
    minify: false,
    lib: {
      entry: join(import.meta.dirname, '../electron/shell/preload.ts'),
      formats: ['cjs'],
      fileName: () => 'preload.cjs',
    },
    rolldownOptions: { external: ['electron'], output: { codeSplitting: false } },
  },
})
