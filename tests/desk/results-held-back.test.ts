import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { type Delivered, delivered, plainFile, readIn } from '../support/delivered.ts'

let at: Delivered
beforeAll(async () => {
  at = await delivered(4)
}, 60_000)
afterAll(() => at.desk.end())

const animal = (place: number) => {
  const found = at.animals[place]
  if (!found) throw new Error('no such animal')
  return found
}
const telling = (place: number) => ({
  animals: [animal(place).animal],
  how: 'phone' as const,
  on: '2026-12-04' as never,
  words: '',
})
const clear = { word: 'not-detected', untoldOnly: true } as const

// One station's winter, in the order in which it happens. No published source: common practice.
describe('a row in doubt holds the result of its animal back', () => {
  test('before any file is read, every bag the courier has is without a result, and none is pending', async () => {
    expect(await at.desk.ask('results', {})).toMatchObject({
      awaiting: { unreported: 8, pending: 0 },
    })
  })

  test('a bag that is detected and not detected in one file holds back the clear one of the other side', async () => {
    await readIn(
      at.desk,
      plainFile([
        [animal(0).left, 'Not detected'],
        [animal(0).right, 'Detected'],
        [animal(0).right, 'Not detected'],
        [animal(1).left, 'Not detected'],
        [animal(1).right, 'Pending'],
        [animal(2).left, 'Not detected'],
        [animal(2).animal, 'Detected'],
        [animal(3).left, 'Detected'],
        [animal(3).right, 'Unsuitable'],
      ]),
    )
    const results = await at.desk.ask('results', {})
    expect(results).toMatchObject({ openDoubts: 4, heldBack: 2 })
    expect(results.awaiting).toEqual({ unreported: 3, pending: 1 })
    expect(results.words.find(({ word }) => word === 'not-detected')).toMatchObject({
      animals: 2,
      untold: 0,
    })
  })

  test('its hunter cannot be recorded as told, and the refusal says where it is settled', async () => {
    const refusal = await at.desk.refusal('hunter.tell', telling(0))
    expect(refusal).toMatchObject({ code: 'result-in-doubt', field: 'animals' })
    expect(refusal.next).toContain('Rows in doubt')
    // The row names the animal by its own number, where a bag's should stand.
    expect(await at.desk.code('hunter.tell', telling(2))).toBe('result-in-doubt')
  })

  test('no letter and no line of the mail merge tells it', async () => {
    for (const list of ['results.letters', 'results.mailMerge'] as const)
      expect(await at.desk.code(list, clear)).toBe('result-in-doubt')
    const { heldBack, animals } = await at.desk.ask('results.animals', clear)
    expect(heldBack).toBe(2)
    expect(animals.every((each) => each.heldBack)).toBe(true)
  })

  test('the look-up and its list say that it is being settled, and nowhere "not detected"', async () => {
    const answer = await at.desk.ask('results.lookUp', { animal: animal(0).animal })
    expect(answer).toMatchObject({ word: null, samples: [] })
    expect(answer.say).toContain('In doubt: being settled')
    expect(answer.next).toContain('Wait for the result before eating the meat')
    expect(JSON.stringify(answer)).not.toMatch(/not.detected/i)
    const { text } = await at.desk.ask('results.lookUpList', {})
    expect(text.split('\n').find((line) => line.startsWith(animal(0).animal))).toMatch(
      /in doubt: being settled$/,
    )
  })

  test('contacts are not erased as if its hunter waited for nothing', async () => {
    const { days } = await at.desk.ask('retention', {})
    expect(days).toMatchObject([{ contacts: 4, untold: 1, awaiting: 3 }])
  })

  test('a detection is followed up and told all the same: no other row can change it', async () => {
    const { animals } = await at.desk.ask('results.followUp', {})
    expect(animals).toMatchObject([{ animal: animal(3).animal, heldBack: false }])
    expect(await at.desk.ask('results.lookUp', { animal: animal(3).animal })).toMatchObject({
      word: 'detected',
    })
    expect(await at.desk.ask('hunter.tell', telling(3))).toEqual({ told: 1 })
  })

  test('once its rows are settled the result is told, as what they were settled to', async () => {
    const { doubts } = await at.desk.ask('results.doubts', {})
    for (const { file, line, bag, word } of doubts.filter((each) => each.bag === animal(0).right))
      await at.desk.ask('results.settle', {
        file,
        line,
        settlement: word === 'detected' ? 'taken' : 'left',
        bag: bag ?? '',
        words: 'asked the laboratory',
      })
    expect(await at.desk.ask('results.lookUp', { animal: animal(0).animal })).toMatchObject({
      word: 'detected',
    })
    expect(await at.desk.ask('hunter.tell', telling(0))).toEqual({ told: 1 })
  })
})
