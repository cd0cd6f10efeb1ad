import { mkdirSync, writeFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { writeGuide } from '../../electron/print/guide.ts'
import { GuideFor, guides } from '../../shared-types/help/guides.ts'
import { drawnPages, pageTexts } from './read-pdf.ts'

const made = Date.parse('2026-11-14T06:00:00-07:00')

describe.each(GuideFor.options)('the guide for the %s', (role) => {
  test.each(['letter', 'a4'] as const)('is one page of %s with every line on it', async (paper) => {
    const pdf = await writeGuide(guides[role], paper, made)
    const pages = await pageTexts(pdf)
    expect(pages).toHaveLength(1)
    const { title, about, parts, cautions } = guides[role]
    const lines = [...parts, cautions].flatMap((part) => [part.title, ...part.lines])
    const flat = (text: string) => text.replace(/\s+/g, '')
    for (const text of [title, about, ...lines]) expect(flat(pages[0] ?? '')).toContain(flat(text))
    if (paper !== 'letter') return
    mkdirSync('.cache/screens', { recursive: true })
    const [page] = await drawnPages(pdf, 90)
    if (page) writeFileSync(`.cache/screens/guide-${role}.png`, page.toBuffer('image/png'))
  })
})
