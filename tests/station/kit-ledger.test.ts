import { describe, expect, test } from 'vitest'
import {
  accountWords,
  decideMoveKits,
  decideSpoilKit,
  kitsLow,
} from '../../electron/station/kit-ledger.ts'
import type { KitAccount } from '../../shared-types/kit.ts'
import type { LabelRecord } from '../../shared-types/label.ts'
import type { PersonRecord } from '../../shared-types/person.ts'
import { sampleNumber } from '../../shared-types/sample-number.ts'
import {
  animal,
  code,
  desk,
  kit,
  lead,
  nameOf,
  refusal,
  sampler,
  volunteer,
  written,
} from './records.ts'

const stock: KitAccount = { in: 'stock' }
const hands: KitAccount = { in: 'hands', person: sampler.person }
const view = { by: volunteer, balance: 10, nameOf }

function move(
  from: KitAccount,
  to: KitAccount,
  {
    by = volunteer,
    count = 4,
    reason = '',
  }: { by?: PersonRecord; count?: number; reason?: string } = {},
) {
  return decideMoveKits({ ...view, by }, { from, to, count, reason })
}

describe('kits are moved', () => {
  test('from stock to hands and back by anyone of the crew, without a reason', () => {
    for (const [from, to] of [
      [stock, hands],
      [hands, stock],
    ] as const)
      expect(written(move(from, to))).toEqual([
        { kind: 'kits.moved', v: 1, body: { from, to, count: 4, reason: '' } },
      ])
  })

  test('as many as are there and no more', () => {
    expect(move(stock, hands, { count: 10 }).ok).toBe(true)
    const short = refusal(move(hands, stock, { count: 11 }))
    expect(short).toMatchObject({ code: 'not-enough-kits', field: 'count' })
    expect(short.say).toBe('There are only 10 there (in hand: Ines Tarr).')
  })

  test('to another place, and never into the accounts that fill by themselves', () => {
    expect(code(move(stock, stock))).toBe('same-account')
    expect(code(move(hands, hands))).toBe('same-account')
    for (const account of [{ in: 'used' }, { in: 'sent' }] as const) {
      expect(code(move(stock, account, { by: lead, reason: 'tidy up' }))).toBe(
        'account-fills-itself',
      )
      expect(code(move(account, stock, { by: lead, reason: 'tidy up' }))).toBe(
        'account-fills-itself',
      )
    }
  })

  test('in from outside and off as missing by the lead alone, and with a reason', () => {
    const settling: [KitAccount, KitAccount][] = [
      [{ in: 'delivered' }, stock],
      [stock, { in: 'missing' }],
      [{ in: 'missing' }, stock],
    ]
    for (const [from, to] of settling) {
      expect(code(move(from, to, { reason: 'second box' }))).toBe('lead-settles-kits')
      expect(code(move(from, to, { by: lead }))).toBe('reason-needed')
      expect(move(from, to, { by: lead, reason: 'second box' }).ok).toBe(true)
    }
  })

  test('into the world outside no balance is asked for: it is where kits come from', () => {
    const delivery = { from: { in: 'delivered' }, to: stock, count: 500, reason: 'truck' } as const
    expect(decideMoveKits({ ...view, by: lead, balance: -100 }, delivery).ok).toBe(true)
  })

  test('to spoiled with a reason', () => {
    expect(code(move(stock, { in: 'spoiled' }))).toBe('reason-needed')
    expect(move(stock, { in: 'spoiled' }, { reason: 'box got wet' }).ok).toBe(true)
  })
})

describe('a numbered kit is spoiled', () => {
  const labels: LabelRecord[] = [
    { number: sampleNumber(desk, 1, 'L'), copy: 1, fate: 'printed' },
    { number: sampleNumber(desk, 1, 'R'), copy: 1, fate: 'void' },
    { number: sampleNumber(desk, 1, 'K'), copy: 1, fate: 'printed' },
  ]

  test('and leaves stock, its labels void with it', () => {
    expect(written(decideSpoilKit(kit(), 5, labels, 'torn bag'))).toMatchObject([
      { kind: 'kit.spoiled', body: { from: { in: 'stock' }, reason: 'torn bag' } },
      { kind: 'label.voided', body: { number: labels[0]?.number, reason: 'kit-spoiled' } },
      { kind: 'label.voided', body: { number: labels[2]?.number, reason: 'kit-spoiled' } },
    ])
  })

  test('not twice, not once it is open on an animal, and not out of an empty stock', () => {
    expect(code(decideSpoilKit(kit(1, { state: 'spoiled' }), 5, [], 'torn bag'))).toBe(
      'kit-already-spoiled',
    )
    const used = kit(1, { state: 'opened', animal: animal(3).animal })
    expect(refusal(decideSpoilKit(used, 5, [], 'torn bag'))).toMatchObject({
      code: 'kit-already-used',
      next: 'Discard the bag that is spoiled, or reprint the label that is.',
    })
    expect(code(decideSpoilKit(kit(), 0, [], 'torn bag'))).toBe('not-enough-kits')
  })
})

test('kits in hand are low at two, or when they do not reach beyond the animals held', () => {
  expect([0, 1, 2, 3].map((kits) => kitsLow(kits, 0))).toEqual(['none', 'low', 'low', 'enough'])
  expect(kitsLow(4, 4)).toBe('low')
  expect(kitsLow(5, 4)).toBe('enough')
})

test('every account has a name of its own', () => {
  const others = ['delivered', 'stock', 'used', 'spoiled', 'sent', 'missing'] as const
  const words = [hands, ...others.map((each) => ({ in: each }))].map((each) =>
    accountWords(each, nameOf),
  )
  expect(new Set(words).size).toBe(7)
  expect(words[0]).toBe('in hand: Ines Tarr')
})
