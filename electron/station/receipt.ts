/** The counter-scan of a delivery against its manifest. */
import { draft, type EntryDraft } from '../../shared-types/entry.ts'
import type { HandoffRecord } from '../../shared-types/handoff.ts'
import type { Manifest } from '../../shared-types/manifest.ts'
import type { ReceiptColumns, ReceiptCounted, ReceivedBag } from '../../shared-types/receipt.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import { BagNumber, grouped, readNumberFor } from '../../shared-types/sample-number.ts'
import type { ReceiptFinding } from '../../shared-types/views/custody.ts'

/** What is missing, extra, damaged, or under another seal than the manifest says. */
export function receiptFindings(manifest: Manifest, counted: ReceiptCounted): ReceiptFinding[] {
  const listed = new Map(
    manifest.coolers.flatMap(({ bags, name }) => bags.map(({ bag }) => [bag, name] as const)),
  )
  const found = new Map(counted.bags.map((each) => [each.bag, each]))
  return [
    ...[...listed].flatMap(([bag, cooler]) =>
      found.has(bag)
        ? []
        : [finding('missing', bag, `Bag ${grouped(bag)} of cooler ${cooler} did not arrive.`)],
    ),
    ...[...found.values()].flatMap(({ bag, state, words }) => [
      ...(listed.has(bag)
        ? []
        : [finding('extra', bag, `Bag ${grouped(bag)} arrived and is not on the manifest.`)]),
      ...(state === 'good'
        ? []
        : [
            finding('damaged', bag, `Bag ${grouped(bag)} arrived damaged: ${words || 'no words'}.`),
          ]),
    ]),
    ...sealFindings(manifest, counted),
  ]
}

function finding(what: ReceiptFinding['what'], bag: BagNumber | null, say: string): ReceiptFinding {
  return { what, bag, say }
}

function sealFindings(manifest: Manifest, counted: ReceiptCounted): ReceiptFinding[] {
  return counted.coolers.flatMap(({ cooler, seal }) => {
    const listed = manifest.coolers.find((each) => each.cooler === cooler)
    if (!listed) return [finding('seal', null, `Cooler ${grouped(cooler)} is not on the manifest.`)]
    if (listed.seal === seal) return []
    return [
      finding(
        'seal',
        null,
        `Cooler ${listed.name} arrived with seal ${seal}; the manifest says ${listed.seal}.`,
      ),
    ]
  })
}

const damage = /damag|leak|broken|open|torn|thaw|empty|wet/i

/**
 * The bags of a counter-scan file, cut into cells, by the columns that a person named. A first line that
 * is no number is a heading. Refuses any other line it cannot read, by its number, and a bag that comes
 * twice.
 */
export function readReceiptRows(
  rows: readonly (readonly string[])[],
  columns: ReceiptColumns,
): Result<ReceivedBag[]> {
  const bags = new Map<string, ReceivedBag>()
  for (const [place, row] of rows.entries()) {
    const cell = (column: number | null) => (column === null ? '' : (row[column] ?? '').trim())
    const read = readNumberFor(['L', 'R', 'X'], cell(columns.bag))
    if (!read.ok) {
      if (place === 0 && read.refusal.code === 'not-a-sample-number') continue
      return refused(
        'line-not-read',
        `Line ${place + 1} of the file is not a bag: ${read.refusal.say}`,
        'Choose another column, put the line right in the file, or scan the bags here.',
        'text',
      )
    }
    const bag = BagNumber.parse(read.value)
    if (bags.has(bag)) return scannedTwice(bag, `line ${place + 1}`)
    const said = cell(columns.condition).slice(0, 120)
    const words = /^(good|ok|whole)$/i.test(said) ? '' : said
    bags.set(bag, { bag, state: damage.test(words) ? 'damaged' : 'good', words })
  }
  return granted([...bags.values()])
}

function scannedTwice(bag: BagNumber, where: string): Result<never> {
  return refused(
    'bag-scanned-twice',
    `Bag ${grouped(bag)} comes twice (${where}).`,
    'A bag is counted once. If two bags carry this number, put both aside and call the station.',
    'bags',
  )
}

/** Records a counter-scan. Refuses one of a handoff that is not signed, and a bag that comes twice. */
export function decideReceipt(
  handoff: HandoffRecord,
  counted: Omit<ReceiptCounted, 'handoff'>,
): Result<EntryDraft[]> {
  if (!handoff.signed)
    return refused(
      'handoff-not-signed',
      `Handoff ${grouped(handoff.handoff)} is not signed, so nothing of it can have arrived.`,
      'Choose a handoff that has left.',
      'handoff',
    )
  const seen = new Set<string>()
  for (const { bag } of counted.bags) {
    if (seen.has(bag)) return scannedTwice(bag, 'in the list')
    seen.add(bag)
  }
  return granted([draft('receipt.counted', { handoff: handoff.handoff, ...counted })])
}
