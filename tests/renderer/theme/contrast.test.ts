/** Every pair of colours that stands on a screen, computed from the stylesheet itself. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { root } from '../../../build/steps.ts'

const css = readFileSync(join(root, 'renderer/theme/colours.css'), 'utf8')

function lightOf(selector: string): Map<string, string> {
  const block = css.slice(css.indexOf(`${selector} {`)).split('}')[0] ?? ''
  return new Map(
    [...block.matchAll(/--([\w-]+): (#[0-9a-f]{6});/g)].map((m) => [m[1] ?? '', m[2] ?? '']),
  )
}

/** Light of red, green and blue, each from 0 to 1 (sRGB, as WCAG 2.2 has it). */
function lights(hex: string): number[] {
  return [1, 3, 5].map((at) => {
    const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4
  })
}

/** Relative luminance, WCAG 2.2, 'relative luminance' in its glossary. */
function luminance(hex: string): number {
  const [r, g, b] = lights(hex)
  return 0.2126 * (r ?? 0) + 0.7152 * (g ?? 0) + 0.0722 * (b ?? 0)
}

/** What is left of a colour in red light. */
const redness = (hex: string) => lights(hex)[0] ?? 0

/** Contrast ratio, WCAG 2.2, 'contrast ratio' in its glossary. */
function contrast(one: string, other: string, of = luminance): number {
  const [light, dark] = [of(one), of(other)].toSorted((a, b) => b - a)
  return ((light ?? 0) + 0.05) / ((dark ?? 0) + 0.05)
}

test('the formula gives the published ends: 21:1 for black on white, 1:1 for a colour on itself', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10)
  expect(contrast('#a4262c', '#a4262c')).toBe(1)
})

const grounds = ['ground', 'raised', 'sunken', 'now-wash', 'soon-wash', 'good-wash', 'accent-wash']
const texts = ['ink', 'muted', 'accent', 'soon', 'now', 'good']
const fills = ['rule', 'soon-fill']

describe.each([
  ['by day', ':root'],
  ['at night', ":root[data-light='night']"],
  ['with high contrast', ":root[data-light='contrast']"],
])('%s', (_, selector) => {
  const light = lightOf(selector)
  const of = (name: string) => light.get(name) ?? 'missing'

  test.each(texts)('text in %s can be read on every ground (WCAG 2.2, 1.4.3: 4.5:1)', (text) => {
    for (const ground of grounds) expect(contrast(of(text), of(ground))).toBeGreaterThanOrEqual(4.5)
  })

  test.each(fills)('a %s can be told from the ground (WCAG 2.2, 1.4.11: 3:1)', (fill) => {
    for (const ground of ['ground', 'raised'])
      expect(contrast(of(fill), of(ground))).toBeGreaterThanOrEqual(3)
  })

  test('words on filled buttons and banners can be read', () => {
    expect(contrast(of('on-accent'), of('accent'))).toBeGreaterThanOrEqual(4.5)
    expect(contrast(of('on-now'), of('now'))).toBeGreaterThanOrEqual(4.5)
    expect(contrast(of('ground'), of('ink'))).toBeGreaterThanOrEqual(4.5)
  })
})

test.each(texts)('at night, text in %s can be read in red light alone', (text) => {
  const night = lightOf(":root[data-light='night']")
  const of = (name: string) => night.get(name) ?? 'missing'
  for (const ground of grounds)
    expect(contrast(of(text), of(ground), redness)).toBeGreaterThanOrEqual(4.5)
})

test.each(texts)('with high contrast, text in %s keeps 7:1 (WCAG 2.2, 1.4.6)', (text) => {
  const light = lightOf(":root[data-light='contrast']")
  const of = (name: string) => light.get(name) ?? 'missing'
  for (const ground of grounds) expect(contrast(of(text), of(ground))).toBeGreaterThanOrEqual(7)
})
