/** The first page of the manifest: who gives what to whom, custody and signatures, cautions, proof. */
import { grouped } from '../../shared-types/sample-number.ts'
import { code128Within, dataMatrixWithin, symbolSize } from './barcode.ts'
import { type Block, beside, gap, stacked } from './flow.ts'
import type { ManifestSheet, ManifestedBag } from './manifest.ts'
import { type Mark, boxMark, mm, shifted } from './mark.ts'
import { signatureBlock, writtenLine } from './signature.ts'
import { paragraph } from './text-block.ts'

const type = 10
/** Divides the dots of every office printer. */
const dpi = 300

/** Common practice, no source; the seals after custody seal guidance (breaks on opening). */
export const manifestCautions = [
  'Wear gloves for a leaking or open cooler, and wash your hands afterwards.',
  'Keep coolers shut: no knife to a seal or tape. A broken seal or a leak: write it down here and call the station before driving on.',
  'Dry ice must be able to vent: never close it airtight, and let fresh air into cab and load space.',
  "The carrier's rules and local rules come before this sheet.",
]

/** After EPA Region V manual 905R78115 (1978): what counts as custody. */
export const custodyWords =
  'Coolers are in custody while they are in your possession or in your view, locked up after they ' +
  'were in your possession, in a restricted secure area, or closed with a seal that breaks on ' +
  'opening. Who signs says that the seals are whole and numbered as listed, except as written under ' +
  'condition. Correct an error by a single line through it, initialled and dated, in indelible ink.'

function barsBlock({ handoff }: ManifestSheet, width: number): Block {
  const symbol = code128Within(handoff, dpi, width, mm(11))
  const marks: Mark[] = symbol
    ? [{ kind: 'barcode', x: width - symbolSize(symbol).width, y: 0, symbol }]
    : []
  return { height: mm(11), marks }
}

function titleBlock(sheet: ManifestSheet, width: number): Block {
  const left = width * 0.56
  const title = sheet.practice ? 'Handoff manifest · PRACTICE' : 'Handoff manifest'
  const edition = sheet.corrections.length + 1
  const words = stacked([
    paragraph(title, 'bold', 18, left),
    paragraph(grouped(sheet.handoff), 'bold', 16, left),
    ...(edition === 1 ? [] : [paragraph(`CORRECTED · edition ${edition}`, 'bold', type + 2, left)]),
    ...(sheet.supplements === null
      ? []
      : [paragraph(`adds to manifest ${grouped(sheet.supplements)}`, 'bold', type, left)]),
  ])
  return beside([
    { x: 0, block: words },
    { x: left, block: barsBlock(sheet, width - left) },
  ])
}

function factBlock(caption: string, lines: readonly string[], width: number): Block {
  return stacked([
    paragraph(caption, 'regular', type, width),
    ...lines.filter(Boolean).map((line) => paragraph(line, 'bold', type + 1, width)),
  ])
}

function factsBlock(
  { station, desk, date, courier, destination }: ManifestSheet,
  width: number,
): Block {
  const third = width / 3
  const across = third - 8
  const vehicle = courier.vehicle === '' ? '' : `vehicle ${courier.vehicle}`
  return beside([
    { x: 0, block: factBlock('From', [station, `desk ${desk}`, date], across) },
    {
      x: third,
      block: factBlock('Courier', [courier.name, courier.organisation, vehicle], across),
    },
    { x: 2 * third, block: factBlock('To the laboratory', [destination], across) },
  ])
}

/** Title, facts, cautions. */
export function frontBlocks(sheet: ManifestSheet, width: number): Block[] {
  const cautions = stacked(
    manifestCautions.map((line) => paragraph(`• ${line}`, 'regular', type, width - 16)),
  )
  const height = cautions.height + 8
  const boxed = [boxMark(0.5, 0.5, width - 1, height, 1), ...shifted(cautions.marks, 8, 4)]
  return [
    titleBlock(sheet, width),
    gap(6),
    factsBlock(sheet, width),
    gap(6),
    { height: height + 1, marks: boxed },
  ]
}

/** How many bags by side and by how they are kept, and the test that leaves open to each. */
function countWords({ coolers }: ManifestSheet): string[] {
  const bags = coolers.flatMap((cooler) => cooler.bags)
  const number = (is: (bag: ManifestedBag) => boolean): number => bags.filter(is).length
  const [left, right, obex] = (['left', 'right', 'obex'] as const).map((site) =>
    number((bag) => bag.site === site),
  )
  const formalin = number(({ kept }) => kept === 'formalin')
  const fixed = ` ${formalin} in formalin, for immunohistochemistry (IHC): never freeze.`
  return [
    `${bags.length} bags listed: ${left} left, ${right} right, ${obex} obex.`,
    `${bags.length - formalin} fresh, for immunoassay (ELISA).${formalin > 0 ? fixed : ''}`,
  ]
}

/** As the lead chose with the carrier; what nobody chose is said to be open. */
function transportWords({ transport, dryIceKg, coolers }: ManifestSheet): string[] {
  const bags = coolers.flatMap((cooler) => cooler.bags)
  const marked = bags.filter(({ excursion }) => excursion).length
  const placeless = bags.filter(({ harvest }) => harvest === '').length
  return [
    transport === ''
      ? 'Class for transport: not chosen here; the carrier and local rules decide.'
      : `Class for transport: ${transport}.`,
    ...(dryIceKg === null
      ? []
      : [`Dry ice, UN1845, class 9: net ${dryIceKg} kg over all coolers.`]),
    ...(marked === 0
      ? []
      : [
          `▲ ${marked} ${marked === 1 ? 'bag' : 'bags'} lay in a cooler while it was outside its limits: marked in the list.`,
        ]),
    ...(placeless === 0
      ? []
      : [
          `▲ Of ${placeless} ${placeless === 1 ? 'bag' : 'bags'} nobody knows where the animal was taken; laboratories commonly do not test such a sample.`,
        ]),
  ]
}

/** Filled in by hand at the laboratory's door, temperature and condition included. */
function laboratoryBlock(width: number): Block {
  const byHand = { name: '', at: '', hand: { how: 'on-paper' as const } }
  return stacked([
    signatureBlock('Received at the laboratory', byHand, width),
    writtenLine('Coolest and warmest °C', '', width),
    writtenLine('Condition', '', width),
  ])
}

/** Nobody has signed for a list that was put right later: whoever takes it over does so by hand. */
function editionBlocks({ corrections }: ManifestSheet, edition: number, width: number): Block[] {
  const { initials = '', at = '' } = corrections.at(-1) ?? {}
  const words =
    `▲ Both signed for edition 1. Edition ${edition} was made afterwards, initialled ${initials} ${at}; what it ` +
    'strikes through or adds is listed below, and the courier has not signed for it.'
  return [
    gap(6),
    paragraph(words, 'bold', type, width),
    writtenLine(
      `Edition ${edition} acknowledged by courier or laboratory: name, signature, date`,
      '',
      width,
    ),
  ]
}

/** Counts, what custody means, condition, and the people through whose hands the coolers go. */
export function custodyBlocks(sheet: ManifestSheet, width: number): Block[] {
  const third = width / 3
  const across = third - 12
  const edition = sheet.corrections.length + 1
  const forFirst = edition === 1 ? '' : ' (edition 1)'
  return [
    gap(4),
    ...countWords(sheet).map((line) => paragraph(line, 'bold', type, width)),
    ...transportWords(sheet).map((line) => paragraph(line, 'regular', type, width)),
    gap(6),
    paragraph(custodyWords, 'regular', type, width),
    gap(2),
    writtenLine('Condition at handoff', sheet.condition, width),
    gap(6),
    beside([
      { x: 0, block: signatureBlock(`Relinquished by${forFirst}`, sheet.relinquished, across) },
      { x: third, block: signatureBlock(`Received by courier${forFirst}`, sheet.received, across) },
      { x: 2 * third, block: laboratoryBlock(across) },
    ]),
    ...(edition === 1 ? [] : editionBlocks(sheet, edition, width)),
  ]
}

/** The digest: as Data Matrix, and as text in groups of eight. */
export function proofBlock({ digest }: ManifestSheet, width: number): Block {
  const symbol = dataMatrixWithin(digest, dpi, mm(20))
  if (!symbol) throw new Error('a digest of 64 characters fits a Data Matrix of 20 mm')
  const side = symbolSize(symbol).width
  const groups = digest.match(/.{1,8}/g) ?? []
  const words = stacked([
    paragraph(
      'SHA-256 of the manifest in the data file, as canonical JSON (RFC 8785)',
      'regular',
      type,
      width - side,
    ),
    paragraph(groups.join(' '), 'mono', type, width - side - 8),
  ])
  return stacked([
    gap(8),
    beside([
      { x: 0, block: { height: side, marks: [{ kind: 'barcode', x: 0, y: 0, symbol }] } },
      { x: side + 6, block: words },
    ]),
  ])
}
