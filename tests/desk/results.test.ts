import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { grouped } from '../../shared-types/sample-number.ts'
import { leadPin } from '../support/desk.ts'
import {
  bothSides,
  bring,
  contactOf,
  type Delivered,
  delivered,
  laboratory,
  plainFile,
  plainReading,
  readIn,
  testedOn,
} from '../support/delivered.ts'

let at: Delivered
beforeAll(async () => {
  at = await delivered(6)
}, 60_000)
afterAll(() => at.desk.end())

const animal = (place: number) => {
  const found = at.animals[place]
  if (!found) throw new Error('no such animal')
  return found
}

// One station's winter, in the order in which it happens: each test goes on where the last ended.
describe('results come in', () => {
  test('a look says what the file seems to be, and asks what cannot be known', async () => {
    const file = plainFile([
      [animal(0).left, 'Not detected', '3/4/2026'],
      [animal(1).left, 'Detected', '5/6/2026'],
    ])
    const brought = await bring(at.desk, file)
    const look = await at.desk.ask('results.look', {
      brought,
      laboratory,
      table: null,
      linesAbove: null,
      wordColumn: 1,
      dateColumn: 3,
    })
    expect(look).toMatchObject({
      table: { is: 'text', encoding: 'utf-8', delimiter: ',' },
      encodingSure: true,
      delimiterSure: true,
      linesAbove: 0,
      headings: ['Sample', 'Result', 'Method', 'Tested'],
      dateOrders: ['month-day-year', 'day-month-year'],
      orderInDoubt: true,
      remembered: null,
    })
    expect(look.said.map(({ said }) => said).toSorted()).toEqual(['Detected', 'Not detected'])
  })

  test('rows that are sound become results; method and day are kept', async () => {
    const file = plainFile([
      ...bothSides(animal(0), ['not-detected', 'not-detected']),
      ...bothSides(animal(1), ['detected', 'not-detected']),
      ...bothSides(animal(2), ['pending', 'unsuitable']),
      ['QC', 'QC'],
    ])
    expect(await readIn(at.desk, file)).toEqual({ taken: 5, known: 0, skipped: 1, doubts: 1 })
    const { animals } = await at.desk.ask('results.animals', { word: 'detected', untoldOnly: true })
    expect(animals).toMatchObject([
      {
        animal: animal(1).animal,
        because: 'One sample is enough, whatever the others say.',
        samples: [
          { bag: animal(1).left, word: 'detected', method: 'ELISA', tested: testedOn },
          { bag: animal(1).right, word: 'not-detected' },
        ],
        told: null,
        reach: { is: 'here', ...contactOf(1) },
      },
    ])
  })

  test('how the file was read is remembered by laboratory, and found again by its headings', async () => {
    const moved = `Lab no,Sample,Result,Method,Tested\n7,${animal(3).left},Not detected,ELISA,${testedOn}\n`
    const look = await at.desk.ask('results.look', {
      brought: await bring(at.desk, moved),
      laboratory,
      table: null,
      linesAbove: null,
      wordColumn: null,
      dateColumn: null,
    })
    expect(look.remembered).toMatchObject({ number: { at: 1 }, word: { at: 2 }, tested: { at: 4 } })
    const brought = await bring(at.desk, moved)
    expect(
      await at.desk.code('results.import', { brought, laboratory, reading: plainReading() }),
    ).toBe('heading-differs')
  })

  test('a pending result ends in a final one; the same again is known; a change waits for a person', async () => {
    const file = plainFile([
      [animal(2).left, 'Not detected'],
      [animal(0).left, 'Not detected'],
      [animal(0).right, 'Detected'],
    ])
    expect(await readIn(at.desk, file)).toMatchObject({ taken: 1, known: 1, doubts: 1 })
    const { doubts } = await at.desk.ask('results.doubts', {})
    expect(doubts.map(({ doubt, line }) => [doubt, line])).toEqual([
      ['changed', 4],
      ['unsuitable', 7],
    ])
    const changed = doubts[0]
    if (!changed) throw new Error('nothing in doubt')
    const settling = { file: changed.file, line: 4, settlement: 'taken', words: 'IHC' } as const
    await at.desk.ask('results.settle', settling)
    expect(await at.desk.code('results.settle', settling)).toBe('not-in-doubt')
    const { story } = await at.desk.ask('animal', { animal: animal(0).animal })
    expect(story.filter(({ say }) => say.includes(grouped(animal(0).right))).at(-1)?.say).toContain(
      'detected by ELISA',
    )
    expect(story.filter(({ say }) => /not detected by ELISA/.test(say))).toHaveLength(2)
  })

  test('the same file again brings nothing', async () => {
    const file = plainFile([
      [animal(2).left, 'Not detected'],
      [animal(0).left, 'Not detected'],
    ])
    await readIn(at.desk, file)
    const brought = await bring(at.desk, file)
    expect(
      await at.desk.code('results.import', { brought, laboratory, reading: plainReading() }),
    ).toBe('file-read-before')
  })

  test('all of one doubt are settled alike, with a reason', async () => {
    const { doubts } = await at.desk.ask('results.doubts', {})
    const [first] = doubts
    if (!first) throw new Error('nothing in doubt')
    await at.desk.ask('results.settleAll', {
      file: first.file,
      doubt: 'unsuitable',
      settlement: 'taken',
      words: 'as reported',
    })
    expect((await at.desk.ask('results.doubts', {})).open).toBe(0)
    expect((await at.desk.ask('results.doubts', { settled: true })).doubts).toHaveLength(2)
    const { words } = await at.desk.ask('results', {})
    expect(words.filter(({ animals }) => animals > 0)).toEqual([
      { word: 'not-detected', animals: 1, untold: 1 },
      { word: 'detected', animals: 2, untold: 2 },
    ])
  })
})

describe('hunters are told', () => {
  test('letters, one page each, say to whom, what, and what not to do', async () => {
    const { name, base64 } = await at.desk.ask('results.letters', {
      word: 'detected',
      untoldOnly: true,
    })
    expect(name).toMatch(/^letters-detected-/)
    expect(Buffer.from(base64, 'base64').subarray(0, 5).toString()).toBe('%PDF-')
  })

  test('the mail merge has names and its name says so; formulas in it are text', async () => {
    const { name, text } = await at.desk.ask('results.mailMerge', {
      word: 'detected',
      untoldOnly: true,
    })
    expect(name).toContain('with-names')
    expect(text.split('\n')).toHaveLength(4)
    expect(text).toContain('Hunter Number1')
  })

  test('each telling is an entry: who, how and when; then the hunter is on the list no more', async () => {
    await at.desk.ask('hunter.tell', {
      animals: [animal(1).animal],
      how: 'phone',
      on: '2026-12-04' as never,
      words: 'spoke to her',
    })
    const { animals } = await at.desk.ask('results.animals', { word: 'detected', untoldOnly: true })
    expect(animals.map((each) => each.animal)).toEqual([animal(0).animal])
    const told = await at.desk.ask('results.animals', { word: 'detected', untoldOnly: false })
    expect(told.animals[1]?.told).toMatchObject({
      how: 'phone',
      by: 'Orla Vance',
      word: 'detected',
    })
  })

  test('a detection is not told by a look-up, nor on a day to come, nor is a result that is not there', async () => {
    const telling = { animals: [animal(0).animal], words: '', on: '2026-12-04' as never }
    expect(await at.desk.code('hunter.tell', { ...telling, how: 'look-up' })).toBe(
      'detected-is-told',
    )
    expect(
      await at.desk.code('hunter.tell', { ...telling, how: 'phone', on: '2027-01-01' as never }),
    ).toBe('day-to-come')
    const nothing = { ...telling, animals: [animal(5).animal], how: 'phone' as const }
    expect(await at.desk.code('hunter.tell', nothing)).toBe('nothing-to-tell')
  })

  test('a detection is followed up step by step, and only a detection', async () => {
    await at.desk.ask('result.followUp', {
      animal: animal(1).animal,
      step: 'veterinarian-told',
      words: 'by e-mail',
    })
    const { animals, cautions } = await at.desk.ask('results.followUp', {})
    expect(animals.map((each) => each.animal)).toEqual([animal(0).animal, animal(1).animal])
    expect(animals[1]?.steps[0]).toMatchObject({
      step: 'veterinarian-told',
      done: { by: 'Orla Vance', words: 'by e-mail' },
    })
    // cdc.gov/prions/cwd/prevention.html: do not eat meat from an animal that tests positive.
    expect(cautions[0]).toMatch(/Do not eat meat from an animal that tests positive/)
    expect(
      await at.desk.code('result.followUp', {
        animal: animal(2).animal,
        step: 'closed',
        words: '',
      }),
    ).toBe('nothing-to-follow-up')
  })

  test('a hunter looks a result up by animal number, and no name, tag or hunter number is in the answer', async () => {
    const answer = await at.desk.ask('results.lookUp', { animal: animal(1).animal })
    expect(answer).toMatchObject({ word: 'detected' })
    const { facts } = await at.desk.ask('animal', { animal: animal(1).animal })
    const { text } = await at.desk.ask('results.lookUpList', {})
    for (const secret of ['Number1', facts.hunter, facts.tag, '555-01'])
      for (const said of [JSON.stringify(answer), text]) expect(said).not.toContain(secret)
    expect(text.split('\n')).toHaveLength(5)
    expect(await at.desk.ask('results.lookUp', { animal: animal(5).animal })).toMatchObject({
      word: null,
      say: 'There is no result yet.',
    })
  })

  test('a result that changes after its hunter was told must be told anew', async () => {
    await at.desk.ask('hunter.tell', {
      animals: [animal(2).animal],
      how: 'letter',
      on: '2026-12-04' as never,
      words: '',
    })
    await readIn(at.desk, plainFile([[animal(2).left, 'Detected', '2026-12-01']]))
    const [changed] = (await at.desk.ask('results.doubts', {})).doubts
    if (!changed) throw new Error('nothing in doubt')
    await at.desk.ask('results.settle', {
      file: changed.file,
      line: changed.line,
      settlement: 'taken',
      words: 'confirmed',
    })
    const { animals } = await at.desk.ask('results.animals', { word: 'detected', untoldOnly: true })
    expect(animals.find((each) => each.animal === animal(2).animal)).toMatchObject({
      changedSinceTold: true,
      told: { word: 'not-detected' },
      earlier: [{ word: 'pending' }, { word: 'not-detected' }],
    })
  })
})

describe('what waits, and who may see', () => {
  test('bags that were handed off and never reported are overdue after the days of the rules, oldest first', async () => {
    const bags = () => at.desk.ask('results.overdue', {})
    expect(await bags()).toMatchObject({ days: 60, all: 6 })
    expect((await bags()).bags.some(({ overdue }) => overdue)).toBe(false)
    const { rules } = await at.desk.ask('results', {})
    await at.desk.ask('results.setRules', { rules: { ...rules, overdueDays: 14 } })
    expect((await bags()).bags).toHaveLength(6)
    expect((await bags()).bags.every(({ overdue, daysOut }) => overdue && daysOut === 20)).toBe(
      true,
    )
    expect((await at.desk.ask('results', {})).overdue).toBe(6)
    expect((await at.desk.ask('results.overdueList', {})).text.split('\n')).toHaveLength(8)
  })

  test('how samplers fare is shown to leads only, with an interval', async () => {
    const { rows, overall } = await at.desk.ask('results.training', {})
    expect(overall).toMatchObject({ tested: 6, unsuitable: 1 })
    expect(rows).toMatchObject([
      { name: 'Ines Tarr', site: 'right', tested: 3, unsuitable: 1 },
      { name: 'Ines Tarr', site: 'left', tested: 3, unsuitable: 0 },
    ])
    const window = at.desk.session
    at.desk.newWindow()
    await at.desk.as(at.crew.volunteer)
    expect(await at.desk.code('results.training', {})).toBe('role-may-not')
    expect(await at.desk.code('results.mailMerge', { word: 'detected', untoldOnly: false })).toBe(
      'role-may-not',
    )
    const { animals } = await at.desk.ask('results.animals', {
      word: 'detected',
      untoldOnly: false,
    })
    expect(animals[0]?.reach).toEqual({ is: 'not-yours' })
    expect(
      await at.desk.code('hunter.tell', { animals: ['x'], how: 'phone', on: testedOn, words: '' }),
    ).toBe('role-may-not')
    at.desk.session = window
  })

  test('contacts are erased only when nobody waits, or a lead stands by it; a certificate says so', async () => {
    const day = '2026-11-14' as never
    const { days } = await at.desk.ask('retention', {})
    expect(days).toEqual([{ day, contacts: 6, untold: 2, awaiting: 3 }])
    const refusal = await at.desk.refusal('contacts.purge', { upTo: day, pin: leadPin })
    expect(refusal).toMatchObject({ code: 'hunters-wait', field: 'sure' })
    const { rules } = await at.desk.ask('results', {})
    await at.desk.ask('results.setRules', {
      rules: { ...rules, contactsUntil: '2026-12-03' as never },
    })
    expect(await at.desk.ask('results', {})).toMatchObject({ contactsDue: true })
    expect(await at.desk.ask('retention', {})).toMatchObject({
      due: true,
      contactsUntil: '2026-12-03',
    })
    await at.desk.ask('contacts.purge', { upTo: day, pin: leadPin, sure: true })
    expect(await at.desk.ask('results', {})).toMatchObject({ contactsDue: false })
    const after = await at.desk.ask('retention', {})
    expect(after.days).toEqual([])
    expect(after.purges).toMatchObject([{ by: 'Orla Vance', contacts: 6, upTo: day }])
    const [purge] = after.purges
    const { base64 } = await at.desk.ask('retention.certificate', { entry: purge?.entry ?? '' })
    expect(Buffer.from(base64, 'base64').subarray(0, 5).toString()).toBe('%PDF-')
  })

  test('once contacts are erased the lists say so in their place', async () => {
    const { animals } = await at.desk.ask('results.animals', {
      word: 'detected',
      untoldOnly: false,
    })
    expect(new Set(animals.map(({ reach }) => reach.is))).toEqual(new Set(['erased']))
    const { text } = await at.desk.ask('results.mailMerge', { word: 'detected', untoldOnly: false })
    expect(text).toContain('contact erased after results were told')
    expect(text).not.toContain('Hunter Number')
  })
})
