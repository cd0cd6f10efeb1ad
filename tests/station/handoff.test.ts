import { describe, expect, test } from 'vitest'
import {
  checkReadyToSign,
  decideBeginHandoff,
  decideCallOff,
  decideScanOut,
} from '../../electron/station/handoff.ts'
import type { HandoffRecord } from '../../shared-types/handoff.ts'
import { handoffNumber } from '../../shared-types/sample-number.ts'
import { PackingStep } from '../../shared-types/transport.ts'
import { settings } from '../support/station.ts'
import { code, cooler, desk, morning, refusal, written } from './records.ts'

const number = handoffNumber(desk, 1)
const sealed = cooler(1, { state: 'sealed', seal: 'K-10442' })
const laboratory = 'Basin Animal Disease Laboratory'

function handoff(changed: Partial<HandoffRecord> = {}): HandoffRecord {
  return {
    handoff: number,
    destination: laboratory,
    state: 'loading',
    begunMs: morning,
    signed: null,
    supplements: null,
    classed: null,
    packed: null,
    coolers: [{ cooler: sealed.cooler, scanned: null }],
    ...changed,
  }
}

const signed = handoff({ state: 'signed' })
const calledOff = handoff({ state: 'called-off' })

describe('a handoff begins', () => {
  const begin = (...coolers: Parameters<typeof decideBeginHandoff>[2][number][]) =>
    decideBeginHandoff(number, laboratory, coolers)

  test('with sealed coolers, each once however often it is scanned', () => {
    expect(written(begin(sealed, sealed))).toEqual([
      {
        kind: 'handoff.begun',
        v: 1,
        body: {
          handoff: number,
          destination: laboratory,
          coolers: [sealed.cooler],
          supplements: null,
        },
      },
    ])
  })

  test('but not with one that is open, gone, or being loaded already', () => {
    expect(code(begin(sealed, cooler(2)))).toBe('cooler-not-sealed')
    expect(code(begin({ ...sealed, state: 'handed-off', handoff: number }))).toBe(
      'cooler-handed-off',
    )
    expect(refusal(begin({ ...sealed, handoff: handoffNumber(desk, 4) })).say).toContain(
      '26-KRV-A0004-M',
    )
  })
})

describe('a cooler is scanned out', () => {
  const scan = (
    seen: Partial<Parameters<typeof decideScanOut>[3]> = {},
    on = handoff(),
    the = sealed,
  ) =>
    decideScanOut(
      on,
      the,
      6,
      { seal: 'K-10442', celsius: 4, sure: false, counted: 6, words: '', ...seen },
      settings,
    )

  test('with its seal, its count and its temperature as read now', () => {
    expect(written(scan({ celsius: 8 }))).toMatchObject([
      { kind: 'cooler.scanned-out', body: { seal: 'K-10442', counted: 6, expected: 6, words: '' } },
      { kind: 'cooler.read', body: { celsius: 8, excursion: true } },
    ])
  })

  test('but not under another seal than the log has: then someone has been inside', () => {
    const differs = refusal(scan({ seal: 'K-10443' }))
    expect(differs).toMatchObject({ code: 'seal-differs', field: 'seal' })
    expect(differs.say).toBe('The seal reads K-10443, and the log has K-10442 on North 1.')
  })

  test('with another count only if someone says why, and the manifest will show it', () => {
    const unexplained = refusal(scan({ counted: 5 }))
    expect(unexplained).toMatchObject({ code: 'difference-unexplained', field: 'words' })
    expect(unexplained.say).toBe('5 bags counted, 6 by the log.')
    expect(written(scan({ counted: 5, words: 'one bag torn open' }))[0]?.body).toMatchObject({
      counted: 5,
      expected: 6,
      words: 'one bag torn open',
    })
  })

  test('and a temperature that would be right in °F is asked about once, as readings are', () => {
    expect(refusal(scan({ celsius: 38 }))).toMatchObject({
      code: 'unit-in-doubt',
      field: 'celsius',
    })
    expect(written(scan({ celsius: 38, sure: true }))[1]?.body).toMatchObject({ celsius: 38 })
  })

  test('and words about a count that agrees are not kept', () => {
    expect(written(scan({ words: 'all fine' }))[0]?.body).toMatchObject({ words: '' })
  })

  test('only if it is part of this handoff, and the handoff is loading', () => {
    expect(code(scan({}, handoff(), cooler(2)))).toBe('cooler-not-in-handoff')
    expect(code(scan({}, signed))).toBe('handoff-not-loading')
    expect(code(scan({}, calledOff))).toBe('handoff-not-loading')
  })
})

test('a handoff is called off while it is loading, with a reason', () => {
  expect(written(decideCallOff(handoff(), 'courier broke down'))[0]).toMatchObject({
    kind: 'handoff.called-off',
    body: { reason: 'courier broke down' },
  })
  expect(refusal(decideCallOff(signed, 'courier broke down')).say).toContain('already signed')
  expect(refusal(decideCallOff(calledOff, 'courier broke down')).say).toContain('called off')
})

test('a handoff is signed once every cooler was scanned out, and only once', () => {
  const nameOf = () => 'North 1'
  const scanned = { seal: 'K-10442', celsius: 4, counted: 6, expected: 6, words: '', ms: morning }
  const ready = handoff({ coolers: [{ cooler: sealed.cooler, scanned }] })
  expect(checkReadyToSign(ready, nameOf, true).ok).toBe(true)
  const open = refusal(checkReadyToSign(handoff(), nameOf, true))
  expect(open.say).toBe('Not scanned out yet: North 1.')
  expect(code(checkReadyToSign({ ...ready, state: 'signed' }, nameOf, true))).toBe(
    'handoff-not-loading',
  )
})

test('what is open of packing and class is asked about once, each by its name', () => {
  const nameOf = () => 'North 1'
  const scanned = { seal: 'K-10442', celsius: 4, counted: 6, expected: 6, words: '', ms: morning }
  const ready = handoff({ coolers: [{ cooler: sealed.cooler, scanned }] })
  const asked = refusal(checkReadyToSign(ready, nameOf, false))
  expect(asked.code).toBe('packing-open')
  expect(asked.say).toBe(
    'Still open: 9 of 9 packing steps not answered; class for transport not chosen.',
  )
  const answers = PackingStep.options.map((step) => ({
    step,
    answer: step === 'marks' ? ('not-done' as const) : ('done' as const),
  }))
  const packed = { handoff: number, answers, dryIceKg: null, words: '' }
  const classed = {
    handoff: number,
    transport: 'as-the-carrier-says' as const,
    agreedWith: 'Tam Ridley',
    citation: 'own terms',
  }
  expect(refusal(checkReadyToSign({ ...ready, packed, classed }, nameOf, false)).say).toBe(
    'Still open: 1 packing step not done.',
  )
  const allDone = answers.map(({ step }) => ({ step, answer: 'done' as const }))
  const done = { ...ready, classed, packed: { ...packed, answers: allDone } }
  expect(checkReadyToSign(done, nameOf, false).ok).toBe(true)
})
