/** `export FILE`: a list of animals, samples, kits, coolers or entries. No contact is in any of them. */
import type { ParsedInput } from '../../../shared-types/desk-api.ts'
import { readDesk } from '../../desk/read-desk.ts'
import { withDesk } from '../documents.ts'
import { writeNew } from '../new-files.ts'
import { type Outcome, told, whenGranted } from '../outcome.ts'

interface ExportWish extends ParsedInput<'table'> {
  /** Null for the terminal. */
  readonly out: string | null
}

export async function exportTable(file: string, wish: ExportWish): Promise<Outcome> {
  const { what, format, hunters, out } = wish
  const table = await withDesk(readDesk(file, Date.now), (desk) =>
    desk.ask('table', { what, format, hunters }),
  )
  return whenGranted(table, ({ name, text }) => {
    if (out === null) return { text, value: { name, text }, refusal: null }
    return whenGranted(writeNew([{ path: out, content: text }]), (files) =>
      told([`${what} are in ${out}.`], { files }),
    )
  })
}
