/** The help texts against the program itself: every refusal has its page, every key named is real. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { root } from '../../build/steps.ts'
import { screenEntries } from '../../renderer/frame/screens.ts'
import { guides } from '../../shared-types/help/guides.ts'
import { helpPages } from '../../shared-types/help/pages.ts'
import { refusalHelp } from '../../shared-types/help/refusals.ts'
import { tourSteps } from '../../shared-types/help/tour.ts'

/** What writes a refusal down: a call that begins `refuse`, or an object with its code. */
const written = [/\brefuse\w*\(\s*'([a-z0-9-]+)'/g, /\bcode: '([a-z0-9]+(?:-[a-z0-9]+)+)'/g]

/** Codes that are needs of the lead or likely causes of a variance, told where they stand. */
const told = ['needs.ts', 'line-needs.ts', 'cause', 'practice']

/** Told by the close as something to look at, not refused. */
const needs = ['bags-on-bench']

function sources(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.tsx?$/.test(path) && !told.some((part) => path.includes(part)))
    .map((path) => readFileSync(join(root, folder, path), 'utf8'))
}

const codes = new Set(
  ['db', 'electron', 'renderer']
    .flatMap(sources)
    .flatMap((text) => written.flatMap((form) => [...text.matchAll(form)].map(([, code]) => code))),
)

describe('help is about this program', () => {
  test('each refusal that the sources write has its reason and its page', () => {
    expect(codes.size).toBeGreaterThan(180)
    const without = [...codes].filter(
      (code) => code && !needs.includes(code) && refusalHelp[code] === undefined,
    )
    expect(without, 'write these into shared-types/help/refusals.ts').toEqual([])
  })

  test('reasons and steps are sentences', () => {
    const sentences = [
      ...Object.values(refusalHelp).map(({ why }) => why),
      ...Object.values(helpPages).flatMap(({ about, steps }) => [about, ...steps]),
      ...Object.values(guides).flatMap(({ about, parts, cautions }) => [
        about,
        ...[...parts, cautions].flatMap(({ lines }) => lines),
      ]),
    ]
    for (const sentence of sentences) expect(sentence).toMatch(/^["“A-Z0-9].*[.?!)]$/s)
  })

  test('each key that a guide or the tour names for a screen is the key of that screen', () => {
    const named: Record<string, RegExp> = {
      F2: /line|band on top/,
      F3: /check-in|tag/,
      F4: /bench|next animal/,
      F6: /kits/i,
      F7: /cooler/,
      F8: /count/,
      F9: /handoff/,
      F10: /day|duty|clock/,
      F11: /results/,
      F12: /checks it in|settle/,
    }
    const lines = Object.values(guides).flatMap(({ parts }) => parts.flatMap(({ lines }) => lines))
    for (const line of lines)
      for (const [key] of line.matchAll(/\bF\d+\b/g))
        expect(key === 'F1' || named[key]?.test(line), `${key}: ${line}`).toBe(true)
    const keys = screenEntries.map(({ key }) => key)
    for (const key of Object.keys(named)) expect([...keys, 'F12'], key).toContain(key)
  })

  test('the tour has five steps', () => {
    expect(tourSteps).toHaveLength(5)
  })
})
