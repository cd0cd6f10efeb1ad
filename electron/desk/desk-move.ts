/** A desk goes to another laptop: handed over in order, or taken over when the old one is lost. */
import { existsSync } from 'node:fs'
import { basename, join } from 'node:path'
import { aside } from '../../db/aside.ts'
import type { WritableLog } from '../../db/connection.ts'
import { countContacts, pinRecordOf } from '../../db/kept-apart.ts'
import { type Holder, holderOf, setHolder } from '../../db/lease.ts'
import { transact } from '../../db/log/append.ts'
import { people } from '../../db/read/people.ts'
import type { ParsedInput } from '../../shared-types/desk-api.ts'
import { draft, type EntryDraft } from '../../shared-types/entry.ts'
import type { PersonRecord } from '../../shared-types/person.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import type { CommandCall, CommandHandlers, ShelfCall, ShelfHandlers } from './call.ts'
import { openWithPassphrase } from './contacts.ts'
import { sealStateOf } from './kept/contacts.ts'
import { nowhere } from './machine.ts'
import { checkOwnPin } from './own-pin.ts'

export const moveCommands = {
  'desk.moveOut': async (call, { pin }) => {
    const { kept, log, shelf } = call
    const right = await checkOwnPin(call, pin)
    if (!right.ok) return right
    const { folder } = kept.keeper
    if (folder === null)
      return refused(
        'no-backup-place',
        'There is no stick or disk to carry the desk on.',
        'Plug one in and choose it as the place of backups first.',
      )
    if (countContacts(log) > 0 && !sealStateOf(log, kept.ring).hasPassphrase)
      return refused(
        'passphrase-first',
        'The other laptop could not read the contacts: their key stays here.',
        'Set a passphrase for the contacts first.',
      )
    await kept.keeper.finish()
    const file = freeName(folder, basename(log.path))
    const copied = await handOver(call, join(folder, file))
    if (!copied.ok) return copied
    shelf.shut()
    return granted({ file })
  },
} satisfies Partial<CommandHandlers>

/** This copy stops first: were the power cut between the two steps, none would go on rather than both. */
async function handOver(call: CommandCall, to: string): Promise<Result<number>> {
  const given = giveTo(call, 'moved', draft('desk.moved-out', {}))
  if (!given.ok) return given
  const copied = await aside({ do: 'copy-to-move', log: call.log.path, to })
  if (copied.ok) return copied
  const reason = 'the copy could not be made'
  const back = giveTo(call, laptopOf(call), draft('desk.taken-over', { was: 'moved', reason }))
  return back.ok ? copied : back
}

function giveTo({ act }: CommandCall, holder: Holder, entry: EntryDraft): Result<null> {
  return act((tx) => {
    setHolder(tx, holder)
    return granted({ drafts: [entry], value: null })
  })
}

function freeName(folder: string, file: string): string {
  const stem = file.replace(/\.stationlog$/, '')
  for (let count = 1; ; count += 1) {
    const name = `${stem}-moved${count > 1 ? `-${count}` : ''}.stationlog`
    if (!existsSync(join(folder, name))) return name
  }
}

const laptopOf = ({ deps }: ShelfCall) => (deps.machine ?? nowhere).laptop

type TakeOver = ParsedInput<'desk.takeOver'>

export const moveCalls = {
  'desk.takeOver': async (call, input) => {
    const opened = call.shelf.openUnheld(input.file)
    if (!opened.ok) return opened
    const taken = await takeOver(call, opened.value, input)
    if (taken.ok) call.shelf.putOut(opened.value)
    else opened.value.close()
    return taken
  },
} satisfies Partial<ShelfHandlers>

async function takeOver(
  call: ShelfCall,
  log: WritableLog,
  input: TakeOver,
): Promise<Result<Record<string, never>>> {
  const lead = await leadWithPin(call, log, input.pin)
  if (!lead.ok) return lead
  const { person } = lead.value
  const was = holderOf(log) === 'moved' ? 'moved' : 'lost'
  const taken = transact(log, { now: call.deps.now(), by: person, acceptClock: true }, (tx) => {
    setHolder(tx, laptopOf(call))
    tx.append([draft('desk.taken-over', { was, reason: input.reason })])
    return granted({})
  })
  if (!taken.ok) return taken
  if (input.passphrase) await openWithPassphrase(log, call.kept.ring, input.passphrase)
  call.session.person = person
  return taken
}

/** Nobody is signed in at a log that is not open: the PIN tells which of its leads this is. */
async function leadWithPin(
  { pins, now }: ShelfCall,
  log: WritableLog,
  pin: string,
): Promise<Result<PersonRecord>> {
  let refusal: Result<PersonRecord> = noLead()
  for (const lead of people(log).filter(({ role, active }) => role === 'lead' && active)) {
    const right = await pins.check(lead.person, pin, pinRecordOf(log, lead.person), now)
    if (right.ok) return granted(lead)
    refusal = right
  }
  return refusal
}

function noLead(): Result<never> {
  return refused(
    'no-lead',
    'This log has no station lead who could take it over.',
    'Open a backup of it, or merge it at the office.',
  )
}
