import { copyFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, expect, test } from 'vitest'
import { connectionOf } from '../../db/connection.ts'
import { readLog } from '../../db/log/read-log.ts'
import { verifyLog } from '../../db/log/verify.ts'
import { mergeLogs } from '../../db/merge/merge.ts'
import { alikeAnimals } from '../../db/read/coverage.ts'
import type { DiscrepancyKind, SettleChoice } from '../../shared-types/discrepancy.ts'
import {
  animalNumber,
  bagNumber,
  coolerNumber,
  kitNumber,
} from '../../shared-types/sample-number.ts'
import { value } from '../db/temp-log.ts'
import { leadPin, TestDesk } from '../support/desk.ts'
import { disputedLogs, eight, gap, quarry, second } from './disputed.ts'
import { contentOf, folderForAll } from './histories.ts'

const folder = folderForAll()
const merged = join(folder, 'merged.stationlog')

beforeAll(() => {
  value(mergeLogs({ out: merged, files: disputedLogs(folder), office: null }))
})

/** An office that has taken up a copy of the merged log. */
async function office(code: string): Promise<TestDesk> {
  const desk = new TestDesk()
  desk.now = eight + 3 * 86_400_000
  copyFileSync(merged, join(desk.folder, 'weekend.stationlog'))
  await desk.ask('office.setUp', {
    file: 'weekend.stationlog',
    season: '26',
    station: code,
    letter: 'A',
    name: `Office ${code}`,
    zone: 'America/Denver' as never,
    lead: { name: 'Ada Moor', pin: leadPin },
  })
  return desk
}

/** Settles the first discrepancy of a kind whose words match; `title` finds the side that holds. */
async function settle(
  desk: TestDesk,
  kind: DiscrepancyKind,
  choice: SettleChoice,
  title: RegExp | null,
): Promise<void> {
  const { discrepancies } = await desk.ask('discrepancies', {})
  const found = discrepancies.find(
    (each) => each.kind === kind && (!title || each.sides.some((side) => title.test(side.title))),
  )
  const side = title ? found?.sides.find((each) => title.test(each.title)) : undefined
  await desk.ask('discrepancy.settle', {
    discrepancy: found?.id ?? '',
    choice,
    side: side?.key ?? null,
    words: 'asked both',
  })
}

const logAt = (desk: TestDesk) => join(desk.folder, 'weekend.stationlog')

function rowsOf(desk: TestDesk, sql: string): unknown[] {
  const log = value(readLog(logAt(desk)))
  const rows = connectionOf(log).prepare(sql).all()
  log.close()
  return rows
}

function animalsCounted(desk: TestDesk): number {
  const log = value(readLog(logAt(desk)))
  const animals = alikeAnimals(log).reduce((sum, each) => sum + each.animals, 0)
  log.close()
  return animals
}

test('one animal that was checked in at two stations is counted once, from the moment an office says so', async () => {
  const desk = await office('HEC')
  const before = animalsCounted(desk)
  const kept = animalNumber(gap, 1)
  await settle(desk, 'checked-in-twice', 'same-animal', /A0001/)
  expect(animalsCounted(desk)).toBe(before - 1)
  const { text } = await desk.ask('table', { what: 'animals', format: 'csv', hunters: false })
  const [names = '', ...lines] = text.trim().split(/\r?\n/)
  const at = names.split(',').indexOf('same_animal_as')
  const again = lines.map((line) => line.split(',')).filter((cells) => cells[at] !== '')
  expect(again.map((cells) => [cells[0], cells[at]])).toEqual([[animalNumber(quarry, 1), kept]])

  // Looked into once more, they are two animals after all.
  await settle(desk, 'checked-in-twice', 'all-hold', null)
  expect(animalsCounted(desk)).toBe(before)
  await desk.end()
})

test('the record follows where a bag is, whose it is, who used a kit and which facts are right', async () => {
  const desk = await office('HEC')
  const [left, right] = [bagNumber(gap, 1, 'L'), bagNumber(gap, 1, 'R')]
  await settle(desk, 'bag-twice', 'one-holds', /KRV-C0001/)
  await settle(desk, 'bag-in-two-places', 'one-holds', /Cooler C$/)
  await settle(desk, 'kit-twice', 'one-holds', /KRV-C0001/)
  await settle(desk, 'facts-contradict', 'one-holds', /a doe/)
  const theirs = animalNumber(second, 1)
  const bags = `SELECT bag, animal, cooler FROM bag WHERE bag IN ('${left}', '${right}')`
  expect(rowsOf(desk, bags)).toEqual([
    { bag: left, animal: theirs, cooler: null },
    { bag: right, animal: animalNumber(gap, 1), cooler: coolerNumber(second, 1) },
  ])
  expect(rowsOf(desk, `SELECT animal FROM kit WHERE kit = '${kitNumber(gap, 1)}'`)).toEqual([
    { animal: theirs },
  ])
  expect(rowsOf(desk, `SELECT sex FROM animal WHERE animal = '${animalNumber(gap, 2)}'`)).toEqual([
    { sex: 'female' },
  ])
  await desk.ask('shelf.shut', {})
  const log = value(readLog(logAt(desk)))
  expect(verifyLog(log).readTables).toBe('equal')
  log.close()
  await desk.end()
})

test('two offices that rule differently leave it open, and the record is the same whoever merges', async () => {
  const [hill, river] = [await office('HEC'), await office('RVC')]
  await settle(hill, 'facts-contradict', 'one-holds', /a doe/)
  await settle(river, 'facts-contradict', 'one-holds', /a buck/)
  for (const desk of [hill, river]) await desk.ask('shelf.shut', {})
  const both = [logAt(hill), logAt(river)]
  const [one, turned] = [join(folder, 'one'), join(folder, 'turned')]
  value(mergeLogs({ out: one, files: both, office: null }))
  value(mergeLogs({ out: turned, files: both.toReversed(), office: null }))
  expect(contentOf(one)).toEqual(contentOf(turned))

  value(mergeLogs({ out: logAt(hill), files: [logAt(river)], office: null }))
  await hill.ask('shelf.open', { file: 'weekend.stationlog' })
  const { people } = await hill.ask('people', {})
  await hill.ask('person.signIn', { person: people[0]?.person ?? '', pin: leadPin })
  const { discrepancies } = await hill.ask('discrepancies', {})
  expect(discrepancies.filter(({ state }) => state === 'settled-differently')).toMatchObject([
    { kind: 'facts-contradict' },
  ])
  await hill.end()
  await river.end()
})
