import { fileURLToPath } from 'node:url'
import react from '@vitejs/plugin-react'
import { defineConfig } from 'vitest/config'
import { findBrowser } from './browser.ts'

const here = (file: string) => fileURLToPath(new URL(file, import.meta.url))
const root = here('..')

/**
 * Three kinds of test: `unit` under Node, `dom` for parts of a screen in jsdom, and `screens`,
 * one after another against the built program in a real browser.
 */
export default defineConfig({
  root,
  cacheDir: `${root}/.cache/vite`,
  plugins: [react()],
  resolve: { alias: { electron: here('no-electron.ts') } },
  test: {
    watch: false,
    env: { CHROME_PATH: findBrowser() ?? '' },
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/screens/**'],
          testTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'dom',
          environment: 'jsdom',
          setupFiles: here('dom-setup.ts'),
          include: ['tests/**/*.test.tsx'],
          exclude: ['tests/screens/**'],
          testTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'screens',
          include: ['tests/screens/**/*.test.ts'],
          fileParallelism: false,
          globalSetup: here('fresh-build.ts'),
          testTimeout: 120_000,
          hookTimeout: 120_000,
          // A key is heard and a PIN is proved in their own time on a busy machine.
          expect: { poll: { timeout: 15_000 } },
          // A browser beside a busy machine may miss a beat; what fails twice is a fault.
          retry: 1,
        },
      },
    ],
  },
})
