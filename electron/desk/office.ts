/** An office takes up a merged log: from then on what it settles is signed by its own desk. */
import { join } from 'node:path'
import { keepPin } from '../../db/kept-apart.ts'
import { transact } from '../../db/log/append.ts'
import { takeUpLog } from '../../db/merge/take-up.ts'
import { stationsIn } from '../../db/read/station.ts'
import { draft } from '../../shared-types/entry.ts'
import { granted, refused } from '../../shared-types/result.ts'
import { DeskId, personId } from '../../shared-types/sample-number.ts'
import { officeSettings } from '../station/office.ts'
import type { ShelfHandlers } from './call.ts'
import { pinRecord } from './pin.ts'

export const officeCalls = {
  'office.setUp': async ({ shelf, deps, session }, input) => {
    const { file, season, station, letter, name, zone, lead } = input
    if (!shelf.list().some((each) => each.file === file))
      return refused(
        'not-on-shelf',
        `There is no merged log ${file} in the folder.`,
        'Choose one of the list.',
        'file',
      )
    const desk = DeskId.parse(season + station + letter)
    const record = await pinRecord(lead.pin, deps.randomBytes(16), deps.practice === true)
    const taken = takeUpLog(join(deps.folder, file), desk)
    if (!taken.ok) return taken
    const person = personId(desk, 1)
    const begun = transact(taken.value, { now: deps.now(), by: null }, (tx) => {
      const { practice, settings } = officeSettings(stationsIn(tx))
      tx.append([
        draft('office.set-up', { season, station, letter, name, zone, practice, settings }),
        draft('person.added', { person, name: lead.name, role: 'lead', training: [] }),
        draft('pin.set', { person }),
      ])
      keepPin(tx, person, record)
      return granted(null)
    })
    taken.value.close()
    if (!begun.ok) return begun
    const opened = shelf.open(file)
    if (!opened.ok) return opened
    session.person = person
    return granted({ lead: person })
  },
} satisfies Partial<ShelfHandlers>
