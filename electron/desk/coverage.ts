/** Coverage: what the samples of each unit prove, what they still need, and what the office says of units. */
import { parse } from 'csv-parse/sync'
import { stringify } from 'csv-stringify/sync'
import type { ReadableLog } from '../../db/connection.ts'
import {
  alikeAnimals,
  bagsAway,
  coveragePlanOf,
  outlinesIn,
  sampledByDay,
  testedByDay,
  turnaroundDays,
} from '../../db/read/coverage.ts'
import { resultRulesOf } from '../../db/read/results.ts'
import { stationsIn } from '../../db/read/station.ts'
import { draft } from '../../shared-types/entry.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import type { CoverageTimesView } from '../../shared-types/views/coverage.ts'
import { coverageOf } from '../station/coverage/coverage.ts'
import { figureOf } from '../station/coverage/figures.ts'
import { readNumbers } from '../station/coverage/numbers-file.ts'
import { unitNeed } from '../station/coverage/need-words.ts'
import {
  type OutlineFile,
  outlinesBy,
  propertyFits,
  readOutlines,
} from '../station/coverage/outlines.ts'
import { classTable, coverageTable } from '../station/coverage/table.ts'
import { daysOfSampling, medianOfBands } from '../station/coverage/times.ts'
import { coverageLimits } from '../station/coverage/warnings.ts'
import type { CommandHandlers, QueryHandlers } from './call.ts'
import { broughtFile } from './results/brought.ts'
import { decoded } from './results/file-text.ts'

/** The units of every station in the log; where two list the same code, the first one's. */
function unitsIn(log: ReadableLog) {
  return stationsIn(log).flatMap(({ settings }) => settings.units)
}

/** All units, or the one named. */
function coverageIn(log: ReadableLog, unit: string | null = null) {
  const plan = coveragePlanOf(log)
  const animals = alikeAnimals(log, unit)
  const { obex } = resultRulesOf(log)
  const herds = coverageOf({ animals, plan, obex, units: unitsIn(log) })
  return { plan, animals, herds }
}

function timesView(log: ReadableLog): CoverageTimesView {
  const turnaround = turnaroundDays(log)
  const reported = turnaround.reduce((sum, { samples }) => sum + samples, 0)
  return {
    days: daysOfSampling(sampledByDay(log), testedByDay(log)),
    turnaround,
    medianDays: medianOfBands(turnaround),
    waiting: Math.max(0, bagsAway(log) - reported),
  }
}

export const coverageQueries = {
  coverage: ({ log, station }) => {
    const { plan, animals, herds } = coverageIn(log)
    return granted({
      station: station.name,
      practice: station.practice,
      plan,
      units: herds,
      withoutUnit: animals
        .filter(({ unit }) => unit === null)
        .reduce((sum, each) => sum + each.animals, 0),
      outlines: outlinesIn(log),
      limits: [...coverageLimits],
    })
  },
  'coverage.times': ({ log }) => granted(timesView(log)),
  'coverage.figure': ({ log }, { unit, species, figure }) => {
    const { plan, herds } = coverageIn(log, unit)
    const of = herds.find((herd) => herd.unit === unit && herd.species === species)
    const view = of ? figureOf(figure, { of, plan }) : null
    return view ? granted(view) : noFigure(unit)
  },
  'coverage.need': ({ log }, { unit, species }) => {
    const { plan, herds } = coverageIn(log, unit)
    const asked = herds.filter(
      (herd) => herd.unit === unit && (species === null || herd.species === species),
    )
    return granted({ say: plan === null ? null : unitNeed(asked, plan) })
  },
  'coverage.csv': ({ log, station }, { by }) => {
    const { herds } = coverageIn(log)
    const name = `${by === 'class' ? 'coverage-by-class' : 'coverage'}-${station.desk}.csv`
    return granted({
      name: station.practice ? `practice-${name}` : name,
      text: csvOf(by === 'class' ? classTable(herds) : coverageTable(herds)),
    })
  },
  'coverage.readNumbers': (_, { text }) => numbersIn(text),
  'outlines.look': ({ log }, { brought }) => {
    const read = broughtOutlines(log, brought)
    if (!read.ok) return read
    const codes = new Set(unitsIn(log).map(({ code }) => code))
    const { features, problems } = read.value.outlines
    return granted({
      features: features.length,
      properties: propertyFits(read.value.outlines, codes),
      problems: [...problems],
    })
  },
} satisfies Partial<QueryHandlers>

/** A file of outlines that was brought to the desk. */
function broughtOutlines(
  log: ReadableLog,
  brought: string,
): Result<{ name: string; outlines: OutlineFile }> {
  const file = broughtFile(log, brought)
  if (!file.ok) return file
  const outlines = readOutlines(decoded(file.value.bytes, 'utf-8'))
  return outlines.ok ? granted({ name: file.value.name, outlines: outlines.value }) : outlines
}

function noFigure(unit: string): Result<never> {
  return refused(
    'no-such-figure',
    `Unit ${unit} has no such figure just now.`,
    'Look at the coverage screen once more: the record may have changed.',
  )
}

/** A cell that a spreadsheet would take for a formula is made harmless. */
function csvOf(rows: ReturnType<typeof coverageTable>): string {
  return stringify(rows, { header: true, escape_formulas: true, bom: true })
}

/** Commas, semicolons or tabs; the headings are in the first line. */
function numbersIn(text: string) {
  try {
    const rows: Record<string, string>[] = parse(text, {
      bom: true,
      columns: (headings: string[]) => headings.map((heading) => heading.trim().toLowerCase()),
      delimiter: [',', ';', '\t'],
      skip_empty_lines: true,
      relax_column_count: true,
      trim: true,
    })
    if (rows[0] === undefined || rows[0].unit === undefined || rows[0].species === undefined)
      return noHeadings
    return granted(readNumbers(rows))
  } catch {
    return noHeadings
  }
}

const noHeadings = refused(
  'no-headings',
  'The text has no columns named unit and species.',
  'Give it the headings unit, species, population, harvested, goal in the first line.',
  'text',
)

export const coverageCommands = {
  'coverage.plan': ({ act }, { plan }) =>
    act(() => granted({ drafts: [draft('coverage.planned', { plan })], value: {} })),
  'outlines.supply': ({ log, act }, { brought, property }) => {
    const read = broughtOutlines(log, brought)
    if (!read.ok) return read
    const outlines = outlinesBy(read.value.outlines, property, read.value.name)
    if (outlines.length === 0)
      return refused(
        'no-unit-codes',
        `The property ${property} holds no unit codes.`,
        'Choose the property in which the code of the unit stands.',
        'property',
      )
    return act(() =>
      granted({
        drafts: outlines.map((outline) => draft('outline.supplied', outline)),
        value: { outlines: outlines.length },
      }),
    )
  },
} satisfies Partial<CommandHandlers>
