/** The certificate that contacts were erased: who, when, up to which day, and what proves it. */
import { gap, type Section } from './flow.ts'
import { innerWidth, type PaperName, paperPages } from './paper.ts'
import { writePdf } from './pdf-writer.ts'
import { paragraph } from './text-block.ts'

export interface PurgeCertificate {
  readonly station: string
  readonly practice: boolean
  readonly desk: string
  readonly by: string
  /** Local time with its zone. */
  readonly at: string
  readonly upTo: string
  readonly contacts: number
  /** The entry that says so: desk, number and SHA-256. */
  readonly entry: { readonly desk: string; readonly seq: number; readonly hash: string }
  /** Contacts that the log still holds now. */
  readonly left: number
  readonly printedAt: string
  readonly madeAtMs: number
}

/** The certificate as a PDF of one page. */
export function printPurgeCertificate(
  certificate: PurgeCertificate,
  paper: PaperName,
): Promise<Uint8Array> {
  const width = innerWidth(paper)
  const { station, practice, desk, by, at, upTo, contacts, entry, left } = certificate
  const title = practice ? 'PRACTICE · contacts erased' : 'Contacts erased'
  const words = (text: string, face: 'regular' | 'bold' | 'mono' = 'regular', size = 11) =>
    paragraph(text, face, size, width)
  const sections: Section[] = [
    {
      rows: [
        words(title, 'bold', 20),
        words(`${station} · desk ${desk}`, 'bold', 12),
        gap(16),
        words(
          `${contacts} contacts of hunters whose animals came in up to and with ${upTo} were erased.`,
        ),
        words(`Erased by ${by} on ${at}.`),
        gap(10),
        words(
          'Names, phone numbers and e-mail addresses were taken out of the log file and its space was overwritten. What was recorded of the animals stays; each entry keeps a digest from which nothing can be told.',
        ),
        gap(10),
        words(`The entry that says so: number ${entry.seq} of desk ${entry.desk}.`),
        words(entry.hash, 'mono', 9),
        words('As long as the log verifies, this entry was neither added later nor altered.'),
        gap(10),
        words(`When this was printed, ${certificate.printedAt}, the log held ${left} contacts.`),
        words(
          'Copies made by hand, sticks, mail merges and letters are not in this log: erase and shred those as well.',
          'bold',
        ),
        gap(40),
        words('Signed for the agency: ______________________________    Date: ______________'),
      ],
    },
  ]
  return writePdf(
    paperPages(paper, sections, () => `${title} · ${station}`),
    {
      title: `${title} · ${station}`,
      madeAtMs: certificate.madeAtMs,
    },
  )
}
