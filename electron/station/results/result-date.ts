/** The day of a test as laboratories and spreadsheets write it. Nobody can tell 3/4 by looking: it is asked. */
import { LocalDate } from '../../../shared-types/local-date.ts'
import { DateOrder } from '../../../shared-types/readings-file.ts'

const months = 'jan feb mar apr may jun jul aug sep oct nov dec'.split(' ')
const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})(?:[T ].*)?$/
const numbers = /^(\d{1,4})[-/.](\d{1,2})[-/.](\d{1,4})\.?(?:[T ,].*)?$/
const dayFirst = /^(\d{1,2})[- ./]([a-z]{3})[a-z]*\.?[- ./,]+(\d{2,4})(?:[T ,].*)?$/i
const monthFirst = /^([a-z]{3})[a-z]*\.?[- ](\d{1,2}),?[- ](\d{2,4})(?:[T ,].*)?$/i

/** The day; null where the text is none by this order. A month in letters needs no order. */
export function readDay(text: string, order: DateOrder): LocalDate | null {
  const tidy = text.trim()
  const plain = iso.exec(tidy)
  if (plain) return day(plain[1], plain[2], plain[3])
  const named = dayFirst.exec(tidy)
  if (named) return day(named[3], monthOf(named[2]), named[1])
  const american = monthFirst.exec(tidy)
  if (american) return day(american[3], monthOf(american[1]), american[2])
  const written = numbers.exec(tidy)
  if (!written) return null
  const [, a, b, c] = written
  switch (order) {
    case 'year-month-day':
      return (a ?? '').length === 4 ? day(a, b, c) : null
    case 'month-day-year':
      return day(c, a, b)
    case 'day-month-year':
      return day(c, b, a)
  }
}

function monthOf(name: string | undefined): string {
  return String(months.indexOf((name ?? '').toLowerCase()) + 1)
}

function day(year = '', month = '', of = ''): LocalDate | null {
  if (year.length !== 2 && year.length !== 4) return null
  const whole = year.length === 2 ? `20${year}` : year
  const read = LocalDate.safeParse(`${whole}-${month.padStart(2, '0')}-${of.padStart(2, '0')}`)
  return read.success ? read.data : null
}

/** The orders by which every one of these texts is a day; more than one is a question to a person. */
export function ordersThatFit(texts: readonly string[]): DateOrder[] {
  const given = texts.filter((text) => text.trim() !== '')
  return DateOrder.options.filter((order) => given.every((text) => readDay(text, order) !== null))
}

/** Whether the order makes a difference to any of these texts. */
export function isOrderInDoubt(texts: readonly string[]): boolean {
  const fit = ordersThatFit(texts)
  return texts.some((text) => new Set(fit.map((order) => readDay(text, order))).size > 1)
}
