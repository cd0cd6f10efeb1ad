import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { connectionOf } from '../../db/connection.ts'
import { openLog } from '../../db/log/open.ts'
import { rebuildReadTables } from '../../db/log/rebuild.ts'
import { verifyLog } from '../../db/log/verify.ts'
import { mergeLogs } from '../../db/merge/merge.ts'
import { discrepanciesIn } from '../../electron/desk/discrepancy-evidence.ts'
import { discrepancyId } from '../../electron/desk/discrepancy-search.ts'
import type { DeskId } from '../../shared-types/sample-number.ts'
import type { DiscrepancyView } from '../../shared-types/views/merge.ts'
import { value } from '../db/temp-log.ts'
import { leadPin, TestDesk } from '../support/desk.ts'
import { disputedLogs, eight } from './disputed.ts'
import { contentOf, folderForAll } from './histories.ts'

const folder = folderForAll()
const files = disputedLogs(folder)

function mergedAt(name: string, order: readonly string[] = files) {
  const out = join(folder, name)
  const report = value(mergeLogs({ out, files: order, office: null }))
  return { out, report }
}

const kindsOfAMerge = [
  'tag-twice',
  'checked-in-twice',
  'bag-twice',
  'bag-in-two-places',
  'bag-on-two-manifests',
  'kit-twice',
  'facts-contradict',
  'amended-after-close',
  'clocks-apart',
  'fork',
  'broken-chain',
  'gap',
  'altered',
  'damaged-file',
]

test('one of everything that people must settle is found, once each', () => {
  const { out, report } = mergedAt('all')
  const log = value(openLog(out))
  const kinds = discrepanciesIn(log).map(({ kind }) => kind)
  log.close()
  expect(kinds.toSorted()).toEqual(kindsOfAMerge.toSorted())
  expect(report.files.map(({ state }) => state).toSorted()).toEqual([
    'damaged',
    ...Array.from({ length: 6 }, () => 'whole'),
  ])
})

test('the same evidence is the same discrepancy, in whatever order the files came', () => {
  const idsOf = (name: string, order: readonly string[]) => {
    const log = value(openLog(mergedAt(name, order).out))
    const ids = discrepanciesIn(log).map(discrepancyId).toSorted()
    log.close()
    return ids
  }
  expect(idsOf('backwards', files.toReversed())).toEqual(idsOf('forwards', files))
})

test('what cannot be proved is kept aside, and the merged log is sound all the same', () => {
  const log = value(openLog(mergedAt('sound').out))
  const { findings, readTables } = verifyLog(log)
  expect(readTables).toBe('equal')
  expect(new Set(findings.map(({ what }) => what))).toEqual(new Set(['gap', 'broken-link', 'fork']))
  const kept = connectionOf(log).prepare('SELECT what FROM unproved ORDER BY what').pluck().all()
  expect(kept).toEqual(['altered', 'damaged-file'])
  value(rebuildReadTables(log))
  expect(connectionOf(log).prepare('SELECT count(*) FROM unproved').pluck().get()).toBe(2)
  log.close()
})

/** An office over a copy of the merged record. */
async function office(code: string, lead: string): Promise<TestDesk> {
  const desk = new TestDesk()
  desk.now = eight + 3 * 86_400_000
  const stick = join(desk.folder, 'stick')
  mkdirSync(stick)
  disputedLogs(stick)
  const { places } = await desk.ask('merge.look', {})
  const place = places.find(({ words }) => words === 'Folder stick')
  await desk.ask('merge.begin', {
    place: place?.place ?? '',
    files: place?.files.map(({ file }) => file) ?? [],
    into: 'weekend',
  })
  await expect
    .poll(async () => (await desk.ask('merge.look', {})).state.is, { timeout: 20_000 })
    .toBe('done')
  await desk.ask('office.setUp', {
    file: 'weekend.stationlog',
    season: '26',
    station: code as never,
    letter: 'A',
    name: `Office ${code}`,
    zone: 'America/Denver' as never,
    lead: { name: lead, pin: leadPin },
  })
  return desk
}

const sideOf = (view: DiscrepancyView, at: number) => view.sides[at]?.key ?? null

async function settleAll(desk: TestDesk, side: number): Promise<void> {
  for (const each of (await desk.ask('discrepancies', {})).discrepancies) {
    const way = each.ways[0]
    if (!way) throw new Error(`no way out of ${each.kind}`)
    await desk.ask('discrepancy.settle', {
      discrepancy: each.id,
      choice: way.choice,
      side: way.namesSide ? sideOf(each, side) : null,
      words: 'asked the stations',
    })
  }
}

const states = async (desk: TestDesk) =>
  new Map(
    (await desk.ask('discrepancies', {})).discrepancies.map(({ kind, state }) => [kind, state]),
  )

test('two offices that settle differently are both shown, and a third look settles it for all', async () => {
  const [hill, river] = [await office('HEC', 'Ada Moor'), await office('RVC', 'Per Lund')]
  await settleAll(hill, 0)
  await settleAll(river, 1)
  expect(new Set((await states(hill)).values())).toEqual(new Set(['settled']))

  for (const desk of [hill, river]) await desk.ask('shelf.shut', {})
  const [hillLog, riverLog] = [hill, river].map(({ folder: at }) => join(at, 'weekend.stationlog'))
  const both = mergedAt('both', [hillLog ?? '', riverLog ?? ''])
  expect(contentOf(both.out)).toEqual(
    contentOf(mergedAt('turned', [riverLog ?? '', hillLog ?? '']).out),
  )

  // One office merges the other's record into its own and settles what they saw differently.
  value(mergeLogs({ out: hillLog ?? '', files: [riverLog ?? ''], office: null }))
  await hill.ask('shelf.open', { file: 'weekend.stationlog' })
  const { people } = await hill.ask('people', {})
  expect(people.map(({ name }) => name)).toEqual(['Ada Moor'])
  await hill.ask('person.signIn', { person: people[0]?.person ?? '', pin: leadPin })
  const differing = (await hill.ask('discrepancies', {})).discrepancies.filter(
    ({ state }) => state === 'settled-differently',
  )
  expect(differing.length).toBeGreaterThan(5)
  for (const { settled } of differing)
    expect(settled.map(({ desk }) => desk).toSorted()).toEqual(['26HECA', '26RVCA'] as DeskId[])
  await settleAll(hill, 1)
  expect(new Set((await states(hill)).values())).toEqual(new Set(['settled']))
  await hill.end()
  await river.end()
}, 60_000)

test('a merge under way can be cancelled, and leaves nothing behind', async () => {
  const desk = new TestDesk()
  const stick = join(desk.folder, 'stick')
  mkdirSync(stick)
  disputedLogs(stick)
  const before = await desk.ask('merge.look', {})
  const place = before.places[0]
  await desk.ask('merge.begin', {
    place: place?.place ?? '',
    files: place?.files.map(({ file }) => file) ?? [],
    into: 'weekend',
  })
  await desk.ask('merge.cancel', {})
  await expect.poll(async () => (await desk.ask('merge.look', {})).state.is).toBe('stopped')
  expect((await desk.ask('shelf.look', {})).logs).toEqual([])
  expect(
    await desk.refusal('merge.begin', { place: 'nowhere', files: ['x.stationlog'], into: 'y' }),
  ).toMatchObject({ code: 'files-gone' })
  await desk.end()
}, 30_000)
