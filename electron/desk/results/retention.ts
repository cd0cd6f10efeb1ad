/** How long contacts are kept, what must be told before they are erased, and what was erased. */
import { countContacts } from '../../../db/kept-apart.ts'
import type { ReadableLog } from '../../../db/connection.ts'
import { resultRulesOf } from '../../../db/read/results.ts'
import {
  animalsSent,
  animalsWithContact,
  contactPurges,
  lastToldWords,
} from '../../../db/read/told.ts'
import type { LocalDate } from '../../../shared-types/local-date.ts'
import { granted, type Result, refused } from '../../../shared-types/result.ts'
import type { RetentionView } from '../../../shared-types/views/results.ts'
import { printPurgeCertificate } from '../../print/purge-certificate.ts'
import { isFinal } from '../../station/animal-result.ts'
import { localDate, localDateTime } from '../../station/local-time.ts'
import type { QueryHandlers } from '../call.ts'
import { namesOf } from '../names.ts'
import { paperOf, pdfFile } from '../pdf.ts'
import { heldBackIn, mayReach, notYours, resultOfEach } from './animals.ts'

type Days = RetentionView['days']

/** By day: contacts kept, and how many of their hunters still wait to be told, or for a result. */
export function keptByDay(log: ReadableLog): Days {
  const results = resultOfEach(log)
  const told = lastToldWords(log)
  const held = heldBackIn(log)
  const sent = new Set(animalsSent(log).map(({ animal }) => animal))
  const days = new Map<LocalDate, Days[number]>()
  for (const { animal, day } of animalsWithContact(log)) {
    const kept = days.get(day) ?? { day, contacts: 0, untold: 0, awaiting: 0 }
    days.set(day, kept)
    kept.contacts += 1
    const word = results.get(animal)?.word ?? null
    if (held.has(animal)) kept.awaiting += 1
    else if (isFinal(word)) kept.untold += told.get(animal) === word ? 0 : 1
    else if (word !== null || sent.has(animal)) kept.awaiting += 1
  }
  return [...days.values()].toSorted((a, b) => (a.day < b.day ? -1 : 1))
}

/** Whether contacts are still here after the day until which they were to be kept. */
export function areContactsDue(log: ReadableLog, today: LocalDate): boolean {
  const { contactsUntil } = resultRulesOf(log)
  return contactsUntil !== null && today > contactsUntil && countContacts(log) > 0
}

/**
 * Refuses to erase contacts of hunters who still wait to be told, unless the person stands by it: nobody
 * can be reached afterwards.
 */
export function checkAllTold(log: ReadableLog, upTo: LocalDate, sure: boolean): Result<null> {
  const waiting = keptByDay(log)
    .filter(({ day }) => day <= upTo)
    .reduce((all, { untold, awaiting }) => all + untold + awaiting, 0)
  if (waiting === 0 || sure) return granted(null)
  return refused(
    'hunters-wait',
    `${waiting} hunters up to ${upTo} were not told their result yet, or have none yet.`,
    'Tell them first; or say that they are to be erased all the same.',
    'sure',
  )
}

export const retentionQueries = {
  retention: ({ log, station, now }) => {
    const nameOf = namesOf(log)
    const { contactsUntil } = resultRulesOf(log)
    const days = keptByDay(log)
    return granted({
      contactsUntil,
      due: areContactsDue(log, localDate(now, station.zone)),
      days,
      purges: contactPurges(log).map(({ hash, wall, by, upTo, contacts }) => ({
        entry: hash,
        ms: wall,
        by: by ? nameOf(by) : '',
        upTo,
        contacts,
      })),
    })
  },
  'retention.certificate': async (call, { entry }) => {
    if (!mayReach(call)) return notYours()
    const { log, station, now } = call
    const purge = contactPurges(log).find(({ hash }) => hash === entry)
    if (!purge) return neverErased()
    const { hash, desk, seq, by, wall, upTo, contacts } = purge
    const certificate = {
      station: station.name,
      practice: station.practice,
      desk: station.desk,
      by: by ? namesOf(log)(by) : 'nobody signed in',
      at: localDateTime(wall, station.zone),
      upTo,
      contacts,
      entry: { desk, seq, hash },
      left: countContacts(log),
      printedAt: localDateTime(now, station.zone),
      madeAtMs: now,
    }
    const pdf = await printPurgeCertificate(certificate, paperOf(station.zone))
    return granted(pdfFile(`contacts-erased-${upTo}.pdf`, pdf))
  },
} satisfies Partial<QueryHandlers>

function neverErased(): Result<never> {
  return refused(
    'never-erased',
    'The log has no such entry of contacts erased.',
    'Choose one of the list.',
    'entry',
  )
}
