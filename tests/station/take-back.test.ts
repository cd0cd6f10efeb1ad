import { describe, expect, test } from 'vitest'
import { decideTakeBack, type TakeBackView } from '../../electron/station/take-back.ts'
import { draft, type EntryDraft, type KnownEntry } from '../../shared-types/entry.ts'
import { factsOf, settings } from '../support/station.ts'
import { animal, bag, cooler, desk, lead, morning, nameOf, sampler, volunteer } from './records.ts'

const { animal: number } = animal()
const second = 1000

let seq = 0
function entry(drafted: EntryDraft, ms = morning, by = volunteer.person): KnownEntry {
  seq += 1
  const hash = seq.toString(16).padStart(64, '0')
  const at = { ms, n: 0, wall: ms }
  return { ...drafted, desk, seq, at, by, prev: hash, hash } as KnownEntry
}

const checkedIn = () =>
  entry(
    draft('animal.checked-in', {
      animal: number,
      day: animal().day,
      facts: factsOf(),
      contact: null,
      noSample: null,
    }),
  )
const assigned = (to = sampler, ms = morning) =>
  entry(draft('animal.assigned', { animal: number, sampler: to.person }), ms, lead.person)

/** All that was written, the last action being that of the person who asks. */
function view(story: readonly KnownEntry[], changed: Partial<TakeBackView> = {}): TakeBackView {
  const by = story.at(-1)?.by
  return {
    now: (story.at(-1)?.at.wall ?? morning) + 8 * second,
    settings,
    mine: story.filter((each) => each.by === by),
    about: () => story,
    coolerOf: () => cooler(),
    kitsAt: () => 100,
    nameOf,
    ...changed,
  }
}

const written = (given: TakeBackView) => {
  const back = decideTakeBack(given)
  if (!back.ok) throw new Error(back.refusal.code)
  return back.value.drafts
}
const code = (given: TakeBackView) => {
  const back = decideTakeBack(given)
  return back.ok ? 'granted' : back.refusal.code
}

describe('within a minute, whoever made a slip takes it back', () => {
  test('a check-in is struck out, with a line that says which entry was taken back', () => {
    const slip = checkedIn()
    expect(written(view([slip]))).toEqual([
      draft('animal.struck-out', { animal: number }),
      draft('slip.taken-back', {
        desk,
        seq: slip.seq,
        kind: 'animal.checked-in',
        animal: number,
      }),
    ])
  })

  test('the wait that was told with it does not stand in the way', () => {
    const told = entry(
      draft('wait.told', { animal: number, lowMinutes: 5, highMinutes: 20, chance: 80 }),
      morning + second,
    )
    expect(written(view([checkedIn(), told]))[0]?.kind).toBe('animal.struck-out')
  })

  test('an animal given to the wrong sampler waits again', () => {
    expect(written(view([checkedIn(), assigned()]))[0]).toMatchObject({ kind: 'animal.put-back' })
  })

  test('an animal moved from one sampler to another goes back to the first', () => {
    const story = [checkedIn(), assigned(sampler, morning + second), assigned(lead, morning + 9000)]
    expect(written(view(story))[0]).toEqual(
      draft('animal.assigned', { animal: number, sampler: sampler.person }),
    )
  })

  test('a correction gives way to the facts before it', () => {
    const wrong = { ...factsOf(), sex: 'female' as const }
    const amended = entry(
      draft('animal.amended', { animal: number, facts: wrong, noSample: null, reason: 'looked' }),
      morning + second,
    )
    const right = checkedIn()
    expect(written(view([right, amended]))[0]).toMatchObject({
      kind: 'animal.amended',
      body: { facts: (right.body as { facts: object }).facts },
    })
  })

  test('a side said to be missing is open again', () => {
    const missed = entry(
      draft('tissue.missed', { animal: number, site: 'left', reason: 'not-found', words: '' }),
      morning + second,
    )
    expect(written(view([checkedIn(), missed]))[0]).toEqual(
      draft('tissue.reopened', { animal: number, site: 'left' }),
    )
  })

  test('a bag put into the wrong cooler lies on the bench again', () => {
    const placed = entry(draft('bag.placed', { bag: bag().bag, cooler: cooler().cooler }))
    expect(written(view([placed]))[0]?.kind).toBe('bag.taken-out')
  })

  test('kits given to the wrong hands go back where they were', () => {
    const hands = { in: 'hands', person: sampler.person } as const
    const moved = entry(
      draft('kits.moved', { from: { in: 'stock' }, to: hands, count: 10, reason: '' }),
    )
    expect(written(view([moved]))[0]).toMatchObject({
      kind: 'kits.moved',
      body: { from: hands, to: { in: 'stock' }, count: 10 },
    })
    expect(code(view([moved], { kitsAt: () => 4 }))).toBe('kits-moved-on')
  })
})

describe('anything else goes through the lead', () => {
  test('after a minute', () => {
    expect(code(view([checkedIn()], { now: morning + 60 * second }))).toBe('granted')
    expect(code(view([checkedIn()], { now: morning + 61 * second }))).toBe('take-back-late')
  })

  test('with nothing done', () => {
    expect(code(view([]))).toBe('nothing-to-take-back')
  })

  test('what somebody has gone on with', () => {
    const mine = checkedIn()
    const story = [mine, assigned(sampler, morning + second)]
    expect(code(view(story, { mine: [mine], now: morning + 5 * second }))).toBe('worked-on-since')
  })

  test('a sealed bag, a finished animal, a printed label: tissue and paper do not go back', () => {
    const finished = draft('animal.finished', {
      animal: number,
      sampler: sampler.person,
      outcome: 'both',
    })
    const discarded = draft('bag.discarded', { bag: bag().bag, reason: 'torn' })
    for (const each of [finished, discarded])
      expect(code(view([entry(each)])), each.kind).toBe('ask-the-lead')
  })

  test('a bag whose cooler has been sealed since', () => {
    const placed = entry(draft('bag.placed', { bag: bag().bag, cooler: cooler().cooler }))
    const sealed = { coolerOf: () => cooler(1, { state: 'sealed', seal: 'S-1' }) }
    expect(code(view([placed], sealed))).toBe('cooler-sealed-since')
  })

  test('a delivery of kits: only the lead settles those', () => {
    const delivered = draft('kits.moved', {
      from: { in: 'delivered' },
      to: { in: 'stock' },
      count: 50,
      reason: 'van came',
    })
    expect(code(view([entry(delivered)]))).toBe('kits-settled')
  })

  test('and the same slip is not taken back twice', () => {
    const slip = checkedIn()
    const back = written(view([slip])).map((each) => entry(each, morning + second))
    expect(code(view([slip, ...back]))).toBe('slip-already-back')
  })
})
