/** The shelf and the station: which log is open, set-up, settings, days, the clock. */
import { keepPin } from '../../db/kept-apart.ts'
import { transact } from '../../db/log/append.ts'
import { latestStamp } from '../../db/log/read-entries.ts'
import { kitBalance } from '../../db/read/kits.ts'
import { daysOf, latestDay } from '../../db/read/station.ts'
import type { ParsedInput } from '../../shared-types/desk-api.ts'
import { draft, type EntryDraft } from '../../shared-types/entry.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import { coolerNumber, DeskId, type PersonId, personId } from '../../shared-types/sample-number.ts'
import { checkDayDate, decideOpenDay, decideReopen, draftsOfOpening } from '../station/day.ts'
import { localDate } from '../station/local-time.ts'
import type { CommandHandlers, ShelfCall, ShelfHandlers } from './call.ts'
import { done } from './decided.ts'
import { pinRecord } from './pin.ts'
import type { Shelf } from './shelf.ts'

type SetUp = ParsedInput<'station.setUp'>

export const shelfCalls = {
  'shelf.look': ({ shelf, deps, now }) =>
    granted({
      open: shelf.openFile,
      readOnly: shelf.isReadOnly,
      logs: shelf.list(),
      today: localDate(now, deps.zone),
      zone: deps.zone,
    }),
  'shelf.open': ({ shelf, session }, { file }) => {
    const was = shelf.openFile
    const opened = shelf.open(file)
    if (!opened.ok) return opened
    if (was !== file) session.person = null
    return granted({})
  },
  'shelf.shut': ({ shelf, session }) => {
    shelf.shut()
    session.person = null
    return granted({})
  },
  'station.setUp': setUpStation,
} satisfies Partial<ShelfHandlers>

/** Begins a log: the station, its first lead, the first day and its opening counts, in one action. */
async function setUpStation(
  { shelf, session, deps }: ShelfCall,
  input: SetUp,
): Promise<Result<{ lead: PersonId }>> {
  const practice = deps.practice === true
  const date = checkDayDate(input.date, localDate(deps.now(), input.zone))
  if (!date.ok) return date
  const desk = DeskId.parse(input.season + input.station + input.letter)
  const free = practice ? granted(null) : checkLetterFree(shelf, desk)
  if (!free.ok) return free
  const record = await pinRecord(input.lead.pin, deps.randomBytes(16), practice)
  const created = shelf.create(fileName(input, desk, practice), desk)
  if (!created.ok) return created
  const lead = personId(desk, 1)
  const begun = transact(created.value, { now: deps.now(), by: null }, (tx) => {
    tx.append(draftsOfSetUp(input, lead, practice))
    keepPin(tx, lead, record)
    return granted({ lead })
  })
  if (begun.ok) session.person = lead
  else shelf.dropUnused()
  return begun
}

/** Two logs of one desk would each count from 1: the same number on the tissue of two animals. */
function checkLetterFree(shelf: Shelf, desk: DeskId): Result<null> {
  const taken = shelf
    .list()
    .find((log) => (log.desk === desk && !log.practice) || log.file.startsWith(`station-${desk}-`))
  if (!taken) return granted(null)
  return refused(
    'desk-already-set-up',
    `Desk ${desk} was set up before, in ${taken.file}.`,
    'Open that log and open the next day in it, or give this desk another letter.',
    'letter',
  )
}

function fileName({ name, date }: SetUp, desk: string, practice: boolean): string {
  const plain = name
    .toLowerCase()
    .normalize('NFKD')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
  return [practice ? 'practice' : 'station', desk, plain, date].filter(Boolean).join('-')
}

const emptyStock = { inStock: 0, missing: 0 }

function draftsOfSetUp(input: SetUp, lead: PersonId, practice: boolean): EntryDraft[] {
  const { season, station, letter, name, zone, settings, date, kits, blankLabels } = input
  const desk = DeskId.parse(season + station + letter)
  return [
    draft('station.set-up', { season, station, letter, name, zone, practice, settings }),
    draft('person.added', {
      person: lead,
      name: input.lead.name,
      role: 'lead',
      training: ['deer', 'elk-and-moose', 'skinned-heads'],
    }),
    draft('pin.set', { person: lead }),
    draft('duty.changed', { person: lead, duty: 'on' }),
    ...draftsOfOpening({ date, kits, blankLabels, stockCounted: null }, emptyStock),
    ...Array.from({ length: input.coolers }, (_, place) =>
      draft('cooler.opened', {
        cooler: coolerNumber(desk, place + 1),
        name: `Cooler ${place + 1}`,
        keeping: 'chilled',
        capacity: null,
      }),
    ),
  ]
}

export const stationCommands = {
  'settings.change': ({ act }, { settings }) =>
    act(() => granted({ drafts: [draft('settings.changed', { settings })], value: {} })),
  'day.open': ({ act, now, station }, opening) =>
    act((tx) => {
      const stock = { inStock: kitBalance(tx, 'stock'), missing: kitBalance(tx, 'missing') }
      return done(decideOpenDay(daysOf(tx), opening, localDate(now, station.zone), stock))
    }),
  'day.reopen': ({ act }, { reason }) => act((tx) => done(decideReopen(latestDay(tx), reason))),
  'clock.accept': ({ log, now, act }) => {
    const lastMs = latestStamp(log).ms
    const drafts = [draft('clock.accepted', { wallMs: now, lastMs })]
    return act(() => granted({ drafts, value: {} }), { acceptClock: true })
  },
} satisfies Partial<CommandHandlers>
