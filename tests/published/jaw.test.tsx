/**
 * Age by the lower jaw. Indiana Department of Natural Resources, on the ages of deer
 * (in.gov/dnr/fishwild/2737.htm; the same in New York's guide, docslib.org/doc/503558): fewer than six
 * cheek teeth is a fawn; six with the third three-cusped, or new and white, a yearling of a year and a
 * half; six with the third two-cusped, stained and worn like the rest, two and a half or more.
 */
import { cleanup, render } from '@testing-library/react'
import { afterEach, describe, expect, test } from 'vitest'
import { JawAid } from '../../renderer/check-in/jaw-aid.tsx'
import { AgeClass } from '../../shared-types/animal.ts'

afterEach(cleanup)

/** Cusps of each drawn tooth, from front to back: the peaks of its outline. */
function cuspsDrawn(jaw: Element): number[] {
  return [...jaw.querySelectorAll('.jaw-tooth')].map((tooth) => {
    const heights = [...(tooth.getAttribute('d') ?? '').matchAll(/[ML][\d.]+,([\d.]+)/g)].map(
      ([, y]) => Number(y),
    )
    return heights.filter((y) => y === Math.min(...heights)).length
  })
}

function aid(): Record<AgeClass, { cusps: number[]; words: string }> {
  const { container } = render(<JawAid chosen={null} />)
  const shown = [...container.querySelectorAll('li')].map((item) => ({
    cusps: cuspsDrawn(item),
    words: item.textContent ?? '',
  }))
  return Object.fromEntries(AgeClass.options.map((age, at) => [age, shown[at]])) as never
}

describe('the jaw aid follows the published criteria', () => {
  test('young of the year: fewer than six cheek teeth', () => {
    const { young } = aid()
    expect(young.cusps.length).toBeLessThan(6)
    expect(young.words).toContain('Fewer than 6 cheek teeth')
  })

  test('yearling: six, the third with three cusps, or new and white', () => {
    const { yearling } = aid()
    expect(yearling.cusps).toHaveLength(6)
    expect(yearling.cusps[2]).toBe(3)
    expect(yearling.words).toMatch(/6.*third.*three cusps.*new and white/)
  })

  test('adult: six, the third with two cusps, stained and worn like the rest', () => {
    const { adult } = aid()
    expect(adult.cusps).toHaveLength(6)
    expect(adult.cusps[2]).toBe(2)
    expect(adult.words).toMatch(/6.*third.*two cusps.*stained and worn like the rest/)
  })

  test('and the screen says whose criteria they are, and that they are for deer', () => {
    const { container } = render(<JawAid chosen="adult" />)
    expect(container.textContent).toMatch(/Deer, after Indiana DNR.*Elk, moose: local chart/s)
  })
})
