import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest'
import { createDesk, type Desk } from '../../electron/desk/desk.ts'
import { openLog } from '../../db/log/open.ts'
import { verifyLog } from '../../db/log/verify.ts'
import { Topic } from '../../shared-types/desk-api.ts'
import { entryBodies } from '../../shared-types/entry.ts'
import {
  type Crew,
  checkIn,
  factsOf,
  kitFor,
  leadPin,
  openCooler,
  openStation,
  type TestDesk,
} from '../support/desk.ts'

let desk: TestDesk
let crew: Crew
beforeAll(async () => {
  ;({ desk, crew } = await openStation())
})
afterAll(() => desk.end())

describe('every window hears what changed', () => {
  const heard: string[][] = []
  let stop: () => void
  beforeAll(() => {
    stop = desk.desk.watch((topics) => heard.push([...topics].toSorted()))
  })
  afterEach(() => {
    heard.length = 0
  })

  test('once for one action, by the kinds of its entries', async () => {
    const animal = await checkIn(desk)
    expect(heard).toEqual([['animal']])
    await kitFor(desk, animal)
    expect(heard[1]).toEqual(['kit', 'labels'])
    await openCooler(desk)
    expect(heard[2]).toEqual(['cooler'])
  })

  test('after it is on disk, so that what is asked then is new', async () => {
    let seen = 0
    const stopAsking = desk.desk.watch(() => {
      void desk.desk.call(desk.session, 'line', {}).then((line) => {
        if (line.ok) seen = line.value.totals.checkedIn
      })
    })
    const before = (await desk.ask('line', {})).totals.checkedIn
    await checkIn(desk)
    await desk.ask('who', {})
    stopAsking()
    expect(seen).toBe(before + 1)
  })

  test('nothing for a question, or for what was refused', async () => {
    await desk.ask('line', {})
    await desk.code('animal.checkIn', {
      facts: factsOf({ harvested: '2026-12-01' as never }),
      contact: null,
    })
    expect(heard).toEqual([])
  })

  test('when someone sits down, and when a window stops listening', async () => {
    desk.newWindow()
    await desk.as(crew.lead, leadPin)
    expect(heard).toEqual([['who']])
    stop()
    await checkIn(desk)
    expect(heard).toEqual([['who']])
  })

  test('of every kind of entry by a topic of the contract', () => {
    for (const kind of Object.keys(entryBodies))
      expect(Topic.options).toContain(kind.slice(0, kind.indexOf('.')))
  })
})

describe('two programs on one log', () => {
  let other: Desk
  let there: ReturnType<Desk['openSession']>
  const askThere = async (name: string, input: unknown) => {
    const result = await other.call(there, name, input)
    if (!result.ok) throw new Error(JSON.stringify(result.refusal))
    return result.value as never
  }

  beforeAll(async () => {
    const { folder } = desk
    const now = () => desk.now
    other = createDesk({
      folder,
      now,
      zone: 'America/Denver',
      randomBytes: (count) => new Uint8Array(count),
    })
    there = other.openSession()
    const { open } = await desk.ask('shelf.look', {})
    await askThere('shelf.open', { file: open })
    await askThere('person.signIn', { person: crew.lead, pin: leadPin })
  })
  afterAll(() => other.close())

  test('never give out the same number', async () => {
    const given = await Promise.all(
      Array.from({ length: 12 }, async (_, turn) => {
        const facts = { facts: factsOf(), contact: null }
        if (turn % 2 === 0) return (await desk.ask('animal.checkIn', facts)).animal
        return ((await askThere('animal.checkIn', facts)) as { animal: string }).animal
      }),
    )
    expect(new Set(given).size).toBe(12)
  })

  test('see each other’s work at once, and refuse each other’s tags', async () => {
    await checkIn(desk, { tag: 'ONE-TAG' })
    const again = { facts: factsOf({ tag: 'one-tag' }), contact: null }
    expect(await other.call(there, 'animal.checkIn', again)).toMatchObject({
      refusal: { code: 'tag-already-here' },
    })
    const [mine, theirs] = [await desk.ask('line', {}), await askThere('line', {})]
    expect(theirs).toEqual(mine)
  })

  test('share out the last kit once', async () => {
    const stock = (await desk.ask('line', {})).kitsInStock
    const all = {
      from: { in: 'stock' },
      to: { in: 'hands', person: crew.lead },
      count: stock,
      reason: '',
    }
    const answers = await Promise.all([
      desk.desk.call(desk.session, 'kits.move', all),
      other.call(there, 'kits.move', all),
    ])
    expect(answers.filter(({ ok }) => ok)).toHaveLength(1)
    expect(answers.find(({ ok }) => !ok)).toMatchObject({ refusal: { code: 'not-enough-kits' } })
  })

  test('leave one whole log', async () => {
    await other.close()
    await desk.ask('shelf.shut', {})
    const log = openLog(desk.file)
    if (!log.ok) throw new Error(log.refusal.say)
    expect(verifyLog(log.value)).toMatchObject({ whole: true, readTables: 'equal', findings: [] })
    log.value.close()
  })
})
