/** What a person has said of a laboratory's file so far, and whether that is enough to read it. */
import type { ResultReading, WordMeans } from '../../shared-types/laboratory-result.ts'
import { LocalDate } from '../../shared-types/local-date.ts'
import type { DateOrder } from '../../shared-types/readings-file.ts'
import type { ResultLookView } from '../../shared-types/views/results.ts'

export interface ReadingDraft {
  /** What was found out is taken, until the person says otherwise. */
  readonly table: ResultReading['table'] | null
  readonly linesAbove: number | null
  readonly number: number | null
  readonly word: number | null
  /** Null: not said; -1: no such column, the words or day below hold for the whole file. */
  readonly method: number | null
  readonly methodSaid: string
  readonly tested: number | null
  readonly testedOn: string
  readonly dateOrder: DateOrder | null
  /** Meanings by the laboratory's word in small letters. */
  readonly words: Readonly<Record<string, WordMeans>>
}

export const nothingSaid: ReadingDraft = {
  table: null,
  linesAbove: null,
  number: null,
  word: null,
  method: null,
  methodSaid: '',
  tested: null,
  testedOn: '',
  dateOrder: null,
  words: {},
}

export const noColumn = -1

/** How words are compared: as the desk does. */
export function wordKey(said: string): string {
  return said.trim().replace(/\s+/g, ' ').toLowerCase()
}

/** A draft that says what was said of this laboratory's last file. */
export function rememberedDraft(reading: ResultReading): ReadingDraft {
  return {
    table: null,
    linesAbove: null,
    number: reading.number.at,
    word: reading.word.at,
    method: reading.method?.at ?? noColumn,
    methodSaid: reading.methodSaid,
    tested: reading.tested?.at ?? noColumn,
    testedOn: '',
    dateOrder: reading.dateOrder,
    words: Object.fromEntries(reading.words.map(({ said, means }) => [wordKey(said), means])),
  }
}

/** What is still to be said, in words; empty when the file can be read. */
export function stillToSay(draft: ReadingDraft, look: ResultLookView): string[] {
  const open: string[] = []
  if (draft.number === null) open.push('the column of the sample numbers')
  if (draft.word === null) open.push('the column of the results')
  if (draft.method === null) open.push('the column of the test method')
  if (draft.tested === null) open.push('the column of the test day')
  if (draft.tested === noColumn && draft.testedOn !== '' && !dayOf(draft)) open.push('a day')
  if (needsOrder(draft, look) && draft.dateOrder === null) open.push('how its days are written')
  const unsaid = look.said.filter(({ said }) => draft.words[wordKey(said)] === undefined)
  if (draft.word !== null && unsaid.length === look.said.length && look.said.length > 0)
    open.push('what its words mean')
  return open
}

/** The order of days is asked where a column holds days and more than one order reads them differently. */
export function needsOrder(draft: ReadingDraft, look: ResultLookView): boolean {
  return draft.tested !== null && draft.tested !== noColumn && look.orderInDoubt
}

function dayOf({ testedOn }: ReadingDraft): LocalDate | null {
  return LocalDate.safeParse(testedOn).data ?? null
}

/** The reading, once everything is said. */
export function readingOf(draft: ReadingDraft, look: ResultLookView): ResultReading | undefined {
  const { number, word, method, tested } = draft
  if (stillToSay(draft, look).length > 0) return undefined
  if (number === null || word === null || method === null || tested === null) return undefined
  const column = (at: number) => ({ at, heading: (look.headings[at] ?? '').trim() })
  return {
    table: draft.table ?? look.table,
    linesAbove: draft.linesAbove ?? look.linesAbove,
    number: column(number),
    word: column(word),
    method: method === noColumn ? null : column(method),
    methodSaid: draft.methodSaid,
    tested: tested === noColumn ? null : column(tested),
    testedOn: tested === noColumn ? dayOf(draft) : null,
    dateOrder: draft.dateOrder ?? look.dateOrders[0] ?? 'year-month-day',
    words: Object.entries(draft.words).map(([said, means]) => ({ said, means })),
  }
}
