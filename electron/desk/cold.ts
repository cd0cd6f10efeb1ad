/** How cold coolers were, what a logger recorded, how long ice lasts, what must be frozen next. */
import { parse } from 'csv-parse/sync'
import type { ReadableLog } from '../../db/connection.ts'
import { bagsInCooler, bagsOnBench, type ListedBag } from '../../db/read/bags.ts'
import { coolers as allCoolers, readingsOf } from '../../db/read/coolers.ts'
import { clocksPutBack } from '../../db/read/station.ts'
import { staysIn } from '../../db/read/stays.ts'
import type { CoolerRecord } from '../../shared-types/cooler.ts'
import { draft } from '../../shared-types/entry.ts'
import type { LoggerReading } from '../../shared-types/readings-file.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import type { BagNumber, CoolerNumber } from '../../shared-types/sample-number.ts'
import type { Keeping, StationSettings } from '../../shared-types/station.ts'
import type { ColdView, ExcursionView } from '../../shared-types/views/cold.ts'
import { excursionsOf, gapsIn, insideDuring, meanKineticCelsius } from '../station/cold.ts'
import { isExcursion } from '../station/cooler.ts'
import { holdLine, holdUntilMs, sealedBy } from '../station/hold-clock.ts'
import { fittedGain, iceLasts, statedGain } from '../station/ice.ts'
import { type LoggerPoints, readLogger } from '../station/logger.ts'
import type { CommandHandlers, QueryHandlers } from './call.ts'
import { findCooler } from './find.ts'

const hourMs = 3_600_000

/** A file cut into cells, whatever separates them; lines need not be of one length. */
export function cells(text: string): string[][] {
  const [head = ''] = text.split(/\r?\n/, 1)
  const delimiter = [';', '\t', ','].find((each) => head.includes(each)) ?? sniffed(text)
  return parse(text, {
    delimiter,
    bom: true,
    trim: true,
    relax_column_count: true,
    relax_quotes: true,
    skip_empty_lines: false,
  })
}

/** The first line of a logger's file is often a title without any separator. */
function sniffed(text: string): string {
  const [mark = ','] = [';', '\t', ','].toSorted(
    (a, b) => text.split(b).length - text.split(a).length,
  )
  return mark
}

function cut(text: string): Result<string[][]> {
  try {
    return granted(cells(text))
  } catch {
    return refused(
      'not-a-table',
      'The file is not a table of lines and columns.',
      'Save it as CSV from the logger’s own program, and choose that file.',
      'text',
    )
  }
}

function loggerPoints(
  text: string,
  reading: LoggerReading,
  limits: ColdView['limits'],
  now: number,
): Result<LoggerPoints> {
  const rows = cut(text)
  return rows.ok ? readLogger(rows.value, reading, limits, now) : rows
}

/** Excursions of a cooler, each with the bags that lay in it then and no others. */
export function excursionViews(log: ReadableLog, cooler: CoolerNumber): ExcursionView[] {
  const points = readingsOf(log, cooler).toReversed()
  const excursions = excursionsOf(points)
  if (excursions.length === 0) return []
  const stays = staysIn(log, cooler)
  return excursions.map((each) => ({ ...each, bags: insideDuring(stays, each) }))
}

/** The bags of these coolers that lay in any cooler while that was outside its limits. */
export function bagsInExcursions(log: ReadableLog): ReadonlySet<BagNumber> {
  return new Set(
    allCoolers(log).flatMap(({ cooler }) =>
      excursionViews(log, cooler).flatMap(({ bags }) => bags),
    ),
  )
}

function coldView(log: ReadableLog, settings: StationSettings, cooler: CoolerRecord): ColdView {
  const points = readingsOf(log, cooler.cooler).toReversed()
  return {
    cooler: cooler.cooler,
    limits: settings.limits[cooler.keeping],
    points,
    gaps: gapsIn(points),
    excursions: excursionViews(log, cooler.cooler),
    kinetic: kineticOf(points),
  }
}

function kineticOf(points: ColdView['points']): ColdView['kinetic'] {
  const celsius = meanKineticCelsius(points)
  const [first] = points
  const last = points.at(-1)
  if (celsius === null || !first || !last) return null
  const peak = points.reduce((most, each) => (each.celsius > most.celsius ? each : most), first)
  return {
    celsius,
    windowHours: (last.ms - first.ms) / hourMs,
    peak: peak.celsius,
    peakMs: peak.ms,
  }
}

/** When a bag must be frozen or delivered, read by the clock as it was put right later. */
export function holdOf(
  log: ReadableLog,
  settings: StationSettings,
): (bag: Pick<ListedBag, 'kept' | 'sealedMs'>, keeping: Keeping | null) => number | null {
  const putBack = clocksPutBack(log)
  return (bag, keeping) =>
    holdUntilMs(settings, { ...bag, sealedMs: sealedBy(bag.sealedMs, putBack) }, keeping)
}

function heldThings(log: ReadableLog, settings: StationSettings) {
  const until = holdOf(log, settings)
  const timed = (bags: readonly ListedBag[], keeping: Keeping | null) =>
    bags.map((bag) => ({ bag: bag.bag, untilMs: until(bag, keeping) }))
  return [
    { cooler: null, name: 'Bench', bags: timed(bagsOnBench(log), null) },
    ...allCoolers(log)
      .filter(({ state }) => state !== 'handed-off')
      .map(({ cooler, name, keeping }) => ({
        cooler,
        name,
        bags: timed(bagsInCooler(log, cooler), keeping),
      })),
  ]
}

export const coldQueries = {
  'logger.look': (_call, { text }) => {
    const rows = cut(text)
    if (!rows.ok) return rows
    const shown = rows.value.slice(0, 12)
    return granted({
      rows: shown,
      columns: Math.max(0, ...shown.map((row) => row.length)),
      lines: rows.value.length,
    })
  },
  'logger.preview': ({ log, station: { settings }, now }, { cooler: number, text, reading }) => {
    const cooler = findCooler(log, number)
    if (!cooler.ok) return cooler
    const { keeping } = cooler.value
    const read = loggerPoints(text, reading, settings.limits[keeping], now)
    if (!read.ok) return read
    const { points, skipped } = read.value
    const degrees = points.map(({ celsius }) => celsius).toSorted((a, b) => a - b)
    return granted({
      readings: points.length,
      fromMs: points[0]?.ms ?? 0,
      toMs: points.at(-1)?.ms ?? 0,
      lowest: degrees[0] ?? 0,
      highest: degrees.at(-1) ?? 0,
      excursions: degrees.filter((celsius) => isExcursion(settings, keeping, celsius)).length,
      gaps: gapsIn(points),
      skipped: skipped.slice(0, 20),
      skippedInAll: skipped.length,
    })
  },
  cold: ({ log, station: { settings } }, { cooler: text }) => {
    const cooler = findCooler(log, text)
    return cooler.ok ? granted(coldView(log, settings, cooler.value)) : cooler
  },
  hold: ({ log, station: { settings }, now }) =>
    granted({
      nowMs: now,
      items: holdLine(heldThings(log, settings), now).map(({ of, running, ...rest }) => ({
        cooler: of.cooler,
        name: of.name,
        of: running,
        ...rest,
      })),
    }),
  ice: ({ log, now }, { cooler: text, wattsPerDegree, ...question }) => {
    const cooler = findCooler(log, text)
    if (!cooler.ok) return cooler
    const points = readingsOf(log, cooler.value.cooler).toReversed()
    const contents = question.tissueKg + question.iceKg
    const gain =
      wattsPerDegree === null
        ? fittedGain(points, question.ambientC, contents)
        : statedGain(wattsPerDegree)
    if (!gain) return nothingToFit()
    const lasts = iceLasts({ ...question, gain })
    if (!lasts) return doesNotMelt()
    return granted({
      ...lasts,
      untilMs: Math.round(now + lasts.hours * hourMs),
      wattsPerDegree: gain.wattsPerDegree,
      fittedFrom: gain.fittedFrom,
    })
  },
} satisfies Partial<QueryHandlers>

function nothingToFit(): Result<never> {
  return refused(
    'nothing-to-fit',
    'The readings of this cooler do not say how fast it warms up: that takes four rising ones over an hour, after its ice was gone.',
    'Type the heat gain that the maker states, in watts for each degree.',
    'wattsPerDegree',
  )
}

function doesNotMelt(): Result<never> {
  return refused(
    'does-not-melt',
    'At or below 0 °C outside, the ice does not melt.',
    'Ask again for when it is warmer.',
    'ambientC',
  )
}

export const coldCommands = {
  'logger.import': ({ act, now, station: { settings } }, { cooler: number, file, text, reading }) =>
    act((tx) => {
      const cooler = findCooler(tx, number)
      if (!cooler.ok) return cooler
      const { keeping } = cooler.value
      const read = loggerPoints(text, reading, settings.limits[keeping], now)
      if (!read.ok) return read
      const known = new Set(
        readingsOf(tx, cooler.value.cooler).map(({ ms, celsius }) => `${ms} ${celsius}`),
      )
      const fresh = read.value.points.filter(({ ms, celsius }) => !known.has(`${ms} ${celsius}`))
      if (fresh.length === 0) return takenInBefore(file)
      const readings = fresh.map(({ ms, celsius }) => ({
        ms,
        celsius,
        excursion: isExcursion(settings, keeping, celsius),
      }))
      const { unit, zone } = reading
      return granted({
        drafts: [
          draft('cooler.logger-read', { cooler: cooler.value.cooler, file, unit, zone, readings }),
        ],
        value: {
          readings: readings.length,
          excursions: readings.filter(({ excursion }) => excursion).length,
          gaps: gapsIn(readings).length,
        },
      })
    }),
} satisfies Partial<CommandHandlers>

function takenInBefore(file: string): Result<never> {
  return refused(
    'readings-known',
    `Every reading of ${file} is in the log already.`,
    'Nothing needs taking in. Look at the chart.',
    'file',
  )
}
