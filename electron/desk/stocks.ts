/** The table of label stocks: what a kit takes of each, and what its labels look like on it. */
import type { ReadableLog } from '../../db/connection.ts'
import { allStocks } from '../../db/read/stocks.ts'
import { commonStocks } from '../../shared-types/common-stocks.ts'
import { checkStock, type LabelStock, stockWords } from '../../shared-types/label-stock.ts'
import { granted, type Result } from '../../shared-types/result.ts'
import { kitNumber } from '../../shared-types/sample-number.ts'
import type { PreviewView, StockView } from '../../shared-types/views/printing.ts'
import type { LabelRun } from '../print/label-run.ts'
import { previewMarks } from '../print/preview.ts'
import { kitLabelNumbers } from '../station/labels.ts'
import { decideDescribe, decideRetire, nameFor } from '../station/label-stocks.ts'
import type { CommandHandlers, QueryCall, QueryHandlers } from './call.ts'
import { decided, done } from './decided.ts'
import { layReserved } from './label-runs.ts'

/** The labels of one kit that is reserved for whoever comes. */
function sampleRun(call: QueryCall, stock: LabelStock, all: readonly LabelStock[]) {
  const kit = kitNumber(call.log.desk, 42)
  const labels = kitLabelNumbers(kit, call.station.settings).map((number) => ({ number, copy: 1 }))
  return layReserved(call, [{ kit, animal: null, labels }], stock, all)
}

const inUse = (log: ReadableLog) => allStocks(log).filter(({ retired }) => !retired)

/** The smallest label first. */
function bySize(a: LabelStock, b: LabelStock): number {
  return a.widthMm * a.heightMm - b.widthMm * b.heightMm || a.dpi - b.dpi
}

function stocksShown(call: QueryCall): StockView[] {
  const listed = inUse(call.log).toSorted((a, b) => bySize(a.stock, b.stock))
  const all = listed.map(({ stock }) => stock)
  return listed.map(({ name, stock }): StockView => {
    const run = sampleRun(call, stock, all)
    return {
      name,
      stock,
      words: stockWords(stock),
      kitLabels: run.ok ? run.value.blanks : null,
      tooSmall: run.ok ? null : run.refusal.say,
      isCommon: Object.values<LabelStock>(commonStocks).includes(stock),
    }
  })
}

/** As many labels as show the looks of a kit. */
const shown = 9

function previewOf(stock: LabelStock, run: Result<LabelRun>): PreviewView {
  const { widthMm, heightMm } = stock
  const seen = run.ok ? run.value.labels.slice(0, shown) : []
  return {
    words: stockWords(stock),
    widthMm,
    heightMm,
    labels: seen.map(({ words, marks }) => ({ words, marks: previewMarks(marks) })),
    kitLabels: run.ok ? run.value.blanks : null,
    refusal: run.ok ? null : { say: run.refusal.say, next: run.refusal.next },
  }
}

export const stockQueries = {
  stocks: (call) => granted({ stocks: stocksShown(call) }),
  'stock.preview': (call, { stock }) => {
    const possible = checkStock(stock)
    const all = inUse(call.log).map((each) => each.stock)
    return granted(previewOf(stock, possible.ok ? sampleRun(call, stock, all) : possible))
  },
} satisfies Partial<QueryHandlers>

export const stockCommands = {
  'stock.describe': ({ act }, { stock }) =>
    act((tx) => {
      const listed = allStocks(tx)
      return decided(decideDescribe(stock, listed), { name: nameFor(stock, listed) })
    }),
  'stock.retire': ({ act }, { name }) => act((tx) => done(decideRetire(name, allStocks(tx)))),
} satisfies Partial<CommandHandlers>
