import { describe, expect, test } from 'vitest'
import {
  closeItems,
  decideClose,
  decideExplain,
  differs,
  type DuskView,
  expectedAtDusk,
  isAbsurd,
  itemWords,
  needsBeforeClose,
  signedItems,
} from '../../electron/station/reconcile.ts'
import { type CountItem, countItemKey, type VarianceReason } from '../../shared-types/close.ts'
import { bagNumber } from '../../shared-types/sample-number.ts'
import { code, cooler, day, desk, lead, nameOf, refusal, sampler, written } from './records.ts'

const north = cooler(1, { state: 'sealed', seal: 'K-10442' })
const stock: CountItem = { of: 'kits-in-stock' }
const hands: CountItem = { of: 'kits-in-hand', person: sampler.person }

const dusk: DuskView = {
  totals: {
    checkedIn: 9,
    waiting: 0,
    withSampler: 0,
    finished: 7,
    outcomes: { both: 6, one: 1, none: 0 },
    left: 1,
    recorded: 1,
  },
  animalsInLine: 0,
  coolers: [
    { ...north, bags: 13 },
    { ...cooler(2, { state: 'handed-off' }), bags: 40 },
  ],
  bagsOnBench: 0,
  kitsInStock: 80,
  kitsMissing: 0,
  kitsInHand: [{ person: sampler, kits: 13 }],
  blankLabels: 964,
  unusedLabels: 2,
  counts: new Map(),
  bagsIn: () => [],
  explanations: new Map(),
}

/** The view with everything counted as expected, but for what is off. */
function counted(off: Record<string, number> = {}, view = dusk): DuskView {
  const counts = expectedAtDusk(view).map(
    ({ item, expected }) =>
      [
        countItemKey(item),
        { counted: expected + (off[countItemKey(item)] ?? 0), bags: null },
      ] as const,
  )
  return { ...view, counts: new Map(counts) }
}

function explained(view: DuskView, reason: VarianceReason): DuskView {
  const off = closeItems(view).filter(({ variance }) => variance)
  const explanations = off.map(
    ({ key, expected, counted }) =>
      [key, { expected: expected ?? 0, counted: counted ?? 0, reason, words: '' }] as const,
  )
  return { ...view, explanations: new Map(explanations) }
}

const items = (view: DuskView) => closeItems(view)
const needs = (view: DuskView) => needsBeforeClose(view, items(view)).map((need) => need.code)
const signers = { lead: lead.person, second: sampler.person, aloneBecause: '' }
const close = (view: DuskView) => decideClose(day(), signers, true, view)

describe('at dusk people count', () => {
  test('animals, the bags of each cooler that is here, kits in stock and in hand, and labels', () => {
    expect(items(dusk).map(({ words }) => words)).toEqual([
      'Animals checked in today',
      'Bags in cooler North 1',
      'Kits in stock',
      'Kits in hand: Ines Tarr',
      'Blank labels left',
      'Printed labels not used',
    ])
  })

  test('blind: what the log expects stays hidden until a number is entered', () => {
    for (const item of items(dusk))
      expect(item).toMatchObject({ counted: null, expected: null, variance: null })
    const view = { ...dusk, counts: new Map([['kits-in-stock', { counted: 79, bags: null }]]) }
    const [shown, ...hidden] = items(view).toSorted((a, b) => (b.counted ?? 0) - (a.counted ?? 0))
    expect(shown).toMatchObject({ counted: 79, expected: 80, variance: -1 })
    expect(hidden.every(({ expected }) => expected === null)).toBe(true)
  })

  test('and a cooler that has left is not counted any more', () => {
    const coolers = expectedAtDusk(dusk).filter(({ item }) => item.of === 'bags')
    expect(coolers).toEqual([{ item: { of: 'bags', cooler: north.cooler }, expected: 13 }])
  })

  test('each thing under words of its own', () => {
    const kinds = [stock, hands, { of: 'animals' }, { of: 'blank-labels' }] as const
    expect(new Set(kinds.map((item) => itemWords(item, nameOf))).size).toBe(4)
  })
})

describe('a variance', () => {
  const explain = (view: DuskView, item: CountItem, reason: VarianceReason, words = '') =>
    decideExplain(day().date, items(view), { item, reason, words })
  const short = counted({ 'kits-in-stock': -1 })

  test('is explained for the two numbers that were seen', () => {
    expect(written(explain(short, stock, 'lost', 'blown off the table'))).toEqual([
      {
        kind: 'variance.explained',
        v: 1,
        body: {
          date: '2026-11-14',
          item: stock,
          expected: 80,
          counted: 79,
          reason: 'lost',
          words: 'blown off the table',
        },
      },
    ])
  })

  test('must be explained again when either number moves', () => {
    const view = explained(short, 'lost')
    const stockOf = (each: DuskView) => items(each).find(({ key }) => key === 'kits-in-stock')
    expect(stockOf(view)?.explained).toEqual({ reason: 'lost', words: '' })
    expect(stockOf({ ...view, kitsInStock: 81 })?.explained).toBeNull()
    const recounted = new Map(view.counts).set('kits-in-stock', { counted: 78, bags: null })
    expect(stockOf({ ...view, counts: recounted })?.explained).toBeNull()
  })

  test('is explained once it is there: after counting, and only where the count differs', () => {
    expect(code(explain(dusk, stock, 'lost'))).toBe('count-first')
    expect(code(explain(short, hands, 'lost'))).toBe('no-variance')
    const gone: CountItem = { of: 'bags', cooler: cooler(2).cooler }
    expect(code(explain(short, gone, 'lost'))).toBe('not-on-the-list')
    expect(code(explain(short, stock, 'other'))).toBe('reason-needed')
    expect(explain(short, stock, 'other', 'dog ate it').ok).toBe(true)
  })
})

describe('the close is not signed', () => {
  test('while animals are open, on whatever day they first came', () => {
    const view = { ...counted(), animalsInLine: 1 }
    expect(needs(view)).toEqual(['animals-still-open'])
    expect(refusal(close(view)).say).toBe('1 animal is still waiting or with a sampler.')
  })

  test('while a sealed bag lies on the bench', () => {
    expect(code(close({ ...counted(), bagsOnBench: 2 }))).toBe('bags-on-bench')
  })

  test('while anything is uncounted or unexplained', () => {
    expect(refusal(close(dusk)).say).toBe('6 of 6 things are not counted yet.')
    expect(code(close(counted({ 'kits-in-stock': -1 })))).toBe('variance-unexplained')
  })

  test('and the hardest thing in the way is told first', () => {
    const view = { ...dusk, animalsInLine: 3, bagsOnBench: 1 }
    expect(needs(view)).toEqual(['animals-still-open', 'bags-on-bench', 'not-counted'])
  })
})

describe('two people sign the close', () => {
  const signed = (changed: Partial<Parameters<typeof decideClose>[1]>, wanted = true) =>
    decideClose(day(), { ...signers, ...changed }, wanted, counted())

  test('the lead and somebody else, or the lead alone with the reason for it', () => {
    expect(signed({}).ok).toBe(true)
    expect(code(signed({ second: lead.person }))).toBe('second-is-the-lead')
    expect(code(signed({ second: null }))).toBe('second-wanted')
    const alone = { second: null, aloneBecause: 'snow closed the road' }
    expect(written(signed(alone)).at(-1)?.body).toMatchObject({
      second: null,
      aloneBecause: 'snow closed the road',
    })
  })

  test('the lead alone where the station has settled so', () => {
    expect(signed({ second: null }, false).ok).toBe(true)
  })
})

describe('bags counted by scanning', () => {
  const inLog = [1, 2, 3].map((serial) => bagNumber(desk, serial, 'L'))
  const foreign = bagNumber(desk, 9, 'R')
  const key = countItemKey({ of: 'bags', cooler: north.cooler })
  const scannedAs = (bags: typeof inLog) =>
    items({
      ...dusk,
      coolers: [{ ...north, bags: 3 }],
      bagsIn: () => inLog,
      counts: new Map([[key, { counted: bags.length, bags }]]),
    }).find((each) => each.key === key)

  test('are named where they are missing or too many, even when the number agrees', () => {
    const found = scannedAs([...inLog.slice(1), foreign])
    expect(found).toMatchObject({ variance: 0, scanned: { missing: [inLog[0]], extra: [foreign] } })
    expect(found && differs(found)).toBe(true)
  })

  test('agree when they are the very bags of the log', () => {
    const found = scannedAs(inLog)
    expect(found && differs(found)).toBe(false)
  })
})

test('a count over ten times what can be here is absurd', () => {
  expect([isAbsurd(80, 800), isAbsurd(80, 801), isAbsurd(0, 100), isAbsurd(0, 101)]).toEqual([
    false,
    true,
    false,
    true,
  ])
})

describe('the signed close', () => {
  test('keeps what was expected and counted, and where the animals came out', () => {
    const drafts = written(close(counted()))
    expect(drafts.map(({ kind }) => kind)).toEqual(['day.closed'])
    expect(drafts[0]?.body).toMatchObject({
      date: '2026-11-14',
      lead: lead.person,
      animals: { checkedIn: 9, outcomes: { both: 6, one: 1, none: 0 }, left: 1, recorded: 1 },
    })
  })

  test('shows as signed, whatever the ledger was put right to', () => {
    const [closed] = written(close(explained(counted({ 'kits-in-stock': -1 }), 'lost'))).slice(-1)
    if (closed?.kind !== 'day.closed') throw new Error('the day was not closed')
    const signed = signedItems(closed.body, nameOf).find(({ key }) => key === 'kits-in-stock')
    expect(signed).toMatchObject({ expected: 80, counted: 79, variance: -1 })
    expect(signed?.explained).toEqual({ reason: 'lost', words: '' })
  })
})

describe('the ledger is put right to what was counted', () => {
  function moves(off: Record<string, number>, reason: VarianceReason, missing = 0) {
    const view = explained(counted(off, { ...dusk, kitsMissing: missing }), reason)
    return written(close(view)).flatMap(({ kind, body }) =>
      kind === 'kits.moved' ? [`${body.from.in} > ${body.to.in} ${body.count}`] : [],
    )
  }
  const inHand = countItemKey(hands)

  test('kits that are short go to missing, to spoiled, or were never delivered', () => {
    expect(moves({ 'kits-in-stock': -2 }, 'lost')).toEqual(['stock > missing 2'])
    expect(moves({ [inHand]: -1 }, 'spoiled-not-recorded')).toEqual(['hands > spoiled 1'])
    expect(moves({ 'kits-in-stock': -5 }, 'wrong-opening-count')).toEqual(['stock > delivered 5'])
  })

  test('kits that are over come out of missing as far as it reaches, and else were delivered', () => {
    expect(moves({ 'kits-in-stock': 2 }, 'found', 5)).toEqual(['missing > stock 2'])
    expect(moves({ 'kits-in-stock': 2 }, 'found', 1)).toEqual([
      'missing > stock 1',
      'delivered > stock 1',
    ])
    expect(moves({ 'kits-in-stock': 2 }, 'found')).toEqual(['delivered > stock 2'])
    expect(moves({ 'kits-in-stock': 2 }, 'wrong-opening-count', 5)).toEqual(['delivered > stock 2'])
  })

  test('kits handed over without a word move from those who are short to those who are over', () => {
    expect(moves({ 'kits-in-stock': -3, [inHand]: 3 }, 'miscounted-during-day')).toEqual([
      'stock > missing 3',
      'missing > hands 3',
    ])
  })

  test('and a difference in animals, bags or labels moves no kit', () => {
    const bags = countItemKey({ of: 'bags', cooler: north.cooler })
    expect(moves({ animals: -1, [bags]: -1, 'blank-labels': 7 }, 'lost')).toEqual([])
  })
})
