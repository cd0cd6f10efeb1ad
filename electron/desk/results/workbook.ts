/** Workbooks (.xlsx, Office Open XML) as tables of text. */
import readWorkbook from 'read-excel-file/node'

type Cell = string | number | boolean | Date | null | undefined

/** The sheets of a workbook by name, each cut into cells. */
export type Sheets = ReadonlyMap<string, readonly (readonly string[])[]>

/** A zip archive begins with `PK` and two control characters; no text does. */
export function isWorkbook(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3 && bytes[3] === 4
}

/** The older workbooks (.xls) begin as OLE compound files do (MS-CFB, section 2.2); they are not read. */
export function isOldWorkbook(bytes: Uint8Array): boolean {
  return [0xd0, 0xcf, 0x11, 0xe0].every((byte, at) => bytes[at] === byte)
}

/** Throws where the archive holds no workbook. */
export async function sheetsOf(bytes: Uint8Array): Promise<Sheets> {
  const sheets = await readWorkbook(Buffer.from(bytes))
  return new Map(
    sheets.map(({ sheet, data }) => [
      sheet,
      data.map((row) => row.map((cell) => cellText(cell as Cell))),
    ]),
  )
}

/** A day keeps its calendar day whatever zone this laptop is in: a workbook's days have none. */
function cellText(cell: Cell): string {
  if (cell === null || cell === undefined) return ''
  if (cell instanceof Date) return cell.toISOString().slice(0, 10)
  return String(cell).trim()
}
