import { describe, expect, test } from 'vitest'
import {
  decideBreakSeal,
  decidePlaceBag,
  decideReading,
  decideSeal,
  decideTakeOut,
  isExcursion,
  mayKeep,
  readingAdvice,
} from '../../electron/station/cooler.ts'
import { handoffNumber } from '../../shared-types/sample-number.ts'
import { settings } from '../support/station.ts'
import { bag, code, cooler, desk, refusal, written } from './records.ts'

const sealed = cooler(1, { state: 'sealed', seal: 'K-10442' })
const gone = cooler(1, { state: 'handed-off', seal: 'K-10442' })

// Submission guides: SCWDS, University of Georgia, "avoid packing formalin-fixed tissue with ice packs".
test('fresh tissue is chilled or frozen; tissue in formalin stays at room temperature, never frozen', () => {
  expect(mayKeep('chilled', 'fresh')).toBe(true)
  expect(mayKeep('frozen', 'fresh')).toBe(true)
  expect(mayKeep('room', 'fresh')).toBe(false)
  expect(mayKeep('room', 'formalin')).toBe(true)
  expect(mayKeep('chilled', 'formalin')).toBe(false)
  expect(mayKeep('frozen', 'formalin')).toBe(false)
})

describe('a bag goes into a cooler', () => {
  test('from the bench, and is then in that one place', () => {
    expect(written(decidePlaceBag(bag(), cooler(), 0))).toEqual([
      { kind: 'bag.placed', v: 1, body: { bag: bag().bag, cooler: cooler().cooler } },
    ])
  })

  test('once: the same scan again, and a bag of another cooler, are told apart', () => {
    const here = bag(1, { place: 'cooler', cooler: cooler().cooler })
    expect(code(decidePlaceBag(here, cooler(), 1))).toBe('bag-already-here')
    expect(code(decidePlaceBag(here, cooler(2), 0))).toBe('bag-in-another-cooler')
  })

  test('but not after it was discarded or left with a courier', () => {
    const discarded = refusal(decidePlaceBag(bag(1, { place: 'discarded' }), cooler(), 0))
    expect(discarded).toMatchObject({ code: 'bag-not-here' })
    expect(discarded.say).toContain('discarded')
    expect(refusal(decidePlaceBag(bag(1, { place: 'handed-off' }), cooler(), 0)).say).toContain(
      'handed to a courier',
    )
  })

  test('and not into one that is sealed, gone or full', () => {
    expect(refusal(decidePlaceBag(bag(), sealed, 0)).say).toContain('sealed with K-10442')
    expect(code(decidePlaceBag(bag(), gone, 0))).toBe('cooler-handed-off')
    expect(code(decidePlaceBag(bag(), cooler(1, { capacity: 40 }), 40))).toBe('cooler-full')
    expect(decidePlaceBag(bag(), cooler(1, { capacity: 40 }), 39).ok).toBe(true)
  })

  test('that keeps it as it must be kept', () => {
    const ice = refusal(decidePlaceBag(bag(1, { kept: 'formalin' }), cooler(), 0))
    expect(ice.code).toBe('wrong-keeping')
    expect(ice.next).toContain('must never freeze')
    const warm = refusal(decidePlaceBag(bag(), cooler(1, { keeping: 'room' }), 0))
    expect(warm.next).toContain('on ice, or a frozen one')
  })
})

describe('a bag is taken out', () => {
  const inside = bag(1, { place: 'cooler', cooler: cooler().cooler })

  test('of an open cooler, with a reason', () => {
    expect(written(decideTakeOut(inside, cooler(), 'wrong cooler'))[0]).toMatchObject({
      kind: 'bag.taken-out',
      body: { reason: 'wrong cooler' },
    })
  })

  test('but not of a sealed one, nor of none', () => {
    expect(code(decideTakeOut(inside, sealed, 'wrong cooler'))).toBe('cooler-sealed')
    expect(code(decideTakeOut(bag(), null, 'wrong cooler'))).toBe('bag-not-in-cooler')
  })
})

describe('a temperature', () => {
  test('at a limit is within it, and beyond it an excursion', () => {
    expect([-0.1, 0, 6, 6.1].map((celsius) => isExcursion(settings, 'chilled', celsius))).toEqual([
      true,
      false,
      false,
      true,
    ])
    expect(isExcursion(settings, 'frozen', -14)).toBe(true)
    expect(isExcursion(settings, 'room', 20)).toBe(false)
  })

  test('is recorded with whether it was one, also while the cooler is sealed', () => {
    expect(written(decideReading(sealed, settings, 9.5, false))[0]).toMatchObject({
      kind: 'cooler.read',
      body: { celsius: 9.5, excursion: true },
    })
    expect(code(decideReading(gone, settings, 4, false))).toBe('cooler-handed-off')
  })

  test('in degrees Fahrenheit by mistake is asked about before it is recorded', () => {
    expect(refusal(decideReading(sealed, settings, 38, false))).toMatchObject({
      code: 'unit-in-doubt',
      field: 'celsius',
    })
    expect(written(decideReading(sealed, settings, 38, true))[0]).toMatchObject({
      body: { celsius: 38, excursion: true },
    })
    expect(decideReading(sealed, settings, 15, false).ok).toBe(true)
  })

  test('comes with what to do about it', () => {
    expect(readingAdvice(settings, 'chilled', 4)).toBe('Within the limits.')
    expect(readingAdvice(settings, 'chilled', 9)).toMatch(
      /Too warm.*0 to 6 °C.*tell the laboratory/,
    )
    expect(readingAdvice(settings, 'chilled', -4)).toContain('Too cold')
    expect(readingAdvice(settings, 'frozen', -5)).toContain('Too warm')
    expect(readingAdvice(settings, 'frozen', -60)).toContain('Check the thermometer')
    expect(readingAdvice(settings, 'room', 2)).toContain('into a warm place')
  })
})

describe('a seal', () => {
  test('goes on a cooler with bags inside, and their number is kept', () => {
    expect(written(decideSeal(cooler(), 'K-10442', 12, null))[0]).toMatchObject({
      kind: 'cooler.sealed',
      body: { seal: 'K-10442', bags: 12 },
    })
  })

  test('goes on once, on one cooler, and not on an empty one', () => {
    expect(code(decideSeal(cooler(), 'K-10442', 0, null))).toBe('cooler-empty')
    expect(code(decideSeal(sealed, 'K-10443', 12, null))).toBe('cooler-sealed')
    const on = (broken: boolean) => ({ cooler: 'North 1', broken })
    expect(refusal(decideSeal(cooler(2), 'K-10442', 3, on(false))).say).toContain('on North 1')
    expect(refusal(decideSeal(cooler(2), 'K-10442', 3, on(true))).say).toContain('is broken')
  })

  test('is broken with a reason, but not once the cooler is being loaded', () => {
    expect(written(decideBreakSeal(sealed, 'bag count wrong'))[0]).toMatchObject({
      kind: 'seal.broken',
      body: { seal: 'K-10442', reason: 'bag count wrong' },
    })
    expect(code(decideBreakSeal(cooler(), 'bag count wrong'))).toBe('cooler-not-sealed')
    const loading = { ...sealed, handoff: handoffNumber(desk, 1) }
    expect(code(decideBreakSeal(loading, 'bag count wrong'))).toBe('cooler-in-handoff')
  })
})
