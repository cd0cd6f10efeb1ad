/** The signed manifest for people (PDF) and for machines (JSON, CSV): three forms of the same facts. */
import { stringify } from 'csv-stringify/sync'
import { speciesWords } from '../../shared-types/animal.ts'
import type { HandoffRecord, Signature } from '../../shared-types/handoff.ts'
import type { Manifest } from '../../shared-types/manifest.ts'
import { keepingWords, type StationRecord } from '../../shared-types/station.ts'
import type { CoolerNumber } from '../../shared-types/sample-number.ts'
import { checkWords } from '../../shared-types/tissue.ts'
import { transportWords } from '../../shared-types/transport.ts'
import type { PdfFile, TextFile } from '../../shared-types/views/common.ts'
import { type ManifestSheet, printManifest } from '../print/manifest.ts'
import type { SignedBy } from '../print/signature.ts'
import { localDate, localDateTime } from '../station/local-time.ts'
import { paperOf, pdfFile } from './pdf.ts'

type Signed = NonNullable<HandoffRecord['signed']>

/** The files of a signed handoff, all carrying its digest. */
export async function manifestFiles(
  signed: Signed,
  station: StationRecord,
  now: number,
): Promise<{ pdf: PdfFile; json: TextFile; csv: TextFile }> {
  const name = `manifest-${signed.manifest.handoff}`
  const pdf = await printManifest(sheetOf(signed, now), paperOf(station.zone))
  return {
    pdf: pdfFile(`${name}.pdf`, pdf),
    json: dataFile(signed),
    csv: { name: `${name}.csv`, text: manifestCsv(signed) },
  }
}

function sheetOf(
  { manifest, digest, leadSignature, courierSignature }: Signed,
  now: number,
): ManifestSheet {
  const { zone } = manifest
  const words = (iso: string) => localDateTime(Date.parse(iso), zone)
  const at = words(manifest.handedOverAt)
  return {
    handoff: manifest.handoff,
    station: manifest.station,
    desk: manifest.desk,
    date: localDate(Date.parse(manifest.handedOverAt), zone),
    practice: manifest.practice,
    courier: manifest.courier,
    destination: manifest.destination,
    coolers: manifest.coolers.map(({ keeping, bags, ...cooler }) => ({
      ...cooler,
      kept: keepingWords[keeping],
      bags: bags.map(({ bag, side, species, kept, check, sealedAt, harvest, excursion }) => ({
        harvest,
        excursion,
        bag,
        site: side,
        species: speciesWords[species],
        kept,
        sealedAt: words(sealedAt),
        check: checkWords[check],
      })),
    })),
    condition: '',
    supplements: manifest.supplements,
    transport: transportOf(manifest),
    dryIceKg: manifest.dryIceKg,
    corrections: manifest.corrections.map(({ correctedAt, by, strokes, ...rest }) => ({
      ...rest,
      at: words(correctedAt),
      initials: by.initials,
      strokes: strokes.map(({ cooler, ...stroke }) => ({
        ...stroke,
        cooler: nameIn(manifest, cooler),
      })),
    })),
    data: dataFile({ manifest, digest }),
    relinquished: signedBy(manifest, manifest.lead.name, at, leadSignature),
    received: signedBy(manifest, manifest.courier.name, at, courierSignature),
    digest,
    madeAtMs: now,
  }
}

function nameIn({ coolers }: Manifest, cooler: CoolerNumber): string {
  return coolers.find((each) => each.cooler === cooler)?.name ?? cooler
}

function transportOf({ transport }: Manifest): string {
  if (transport === null) return ''
  const { class: chosen, agreedWith, citation } = transport
  return `${transportWords[chosen]}, chosen by the lead with ${agreedWith} (${citation})`
}

/** The manifest for machines: one form, whether it lies beside the PDF or in it. */
function dataFile({ manifest, digest }: Pick<Signed, 'manifest' | 'digest'>): TextFile {
  return {
    name: `manifest-${manifest.handoff}.json`,
    text: `${JSON.stringify({ digest, manifest }, null, 2)}\n`,
  }
}

/** What was signed with a pen is on the paper of the first edition, and on no later one. */
function signedBy({ corrections }: Manifest, name: string, at: string, hand: Signature): SignedBy {
  if (hand.how === 'drawn' || corrections.length === 0) return { name, at, hand }
  return { name, at, hand: { how: 'elsewhere', words: 'on the paper of edition 1' } }
}

const columns = [
  'handoff',
  'digest',
  'cooler',
  'cooler_name',
  'kept_in',
  'seal',
  'celsius',
  'bag',
  'animal',
  'species',
  'side',
  'kept',
  'check',
  'sealed_at',
  'harvest',
  'excursion',
]

function manifestCsv({ manifest, digest }: { manifest: Manifest; digest: string }): string {
  const rows = manifest.coolers.flatMap((cooler) =>
    cooler.bags.map((bag) => [
      manifest.handoff,
      digest,
      cooler.cooler,
      cooler.name,
      cooler.keeping,
      cooler.seal,
      cooler.celsius,
      bag.bag,
      bag.animal,
      bag.species,
      bag.side,
      bag.kept,
      bag.check,
      bag.sealedAt,
      bag.harvest,
      bag.excursion ? 'yes' : 'no',
    ]),
  )
  return stringify([columns, ...rows], { escape_formulas: true })
}
