/** Looking at a screen: with axe for barriers, and with a picture for people. */
import { mkdirSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { root } from '../../../build/steps.ts'

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/** Rules of WCAG 2.0 to 2.2 at levels A and AA, and axe's own best practices. */
const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

interface AxeAnswer {
  readonly violations: readonly {
    readonly id: string
    readonly help: string
    readonly nodes: readonly { readonly html: string }[]
  }[]
}

/** Each barrier axe finds on the screen as it stands, in a line; none is the aim. */
export async function barriers(page: Page): Promise<string[]> {
  const answer = await page.evaluate(`${axe}; axe.run({ runOnly: ${JSON.stringify(tags)} })`)
  return (answer as AxeAnswer).violations.map(
    ({ id, help, nodes }) => `${id}: ${help}: ${nodes.map(({ html }) => html).join(' ')}`,
  )
}

/** Keeps a picture of the screen in .cache/screens, beside the other output of the tests. */
export async function picture(page: Page, name: string): Promise<void> {
  const folder = join(root, '.cache/screens')
  mkdirSync(folder, { recursive: true })
  await page.screenshot({ path: join(folder, `${name}.png`) })
}
