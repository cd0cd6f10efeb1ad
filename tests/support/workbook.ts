/**
 * A workbook as ECMA-376 (Office Open XML, 5th edition, part 1) describes one, written by hand so that what
 * is read is not read back by its own writer. Cells: text, numbers, and days as Excel keeps them.
 */
import { crc32 } from 'node:zlib'

export type Cell = string | number | { readonly day: string } | null

const xml = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>'
const office = 'http://schemas.openxmlformats.org'
const main = `${office}/spreadsheetml/2006/main`
const relations = `${office}/officeDocument/2006/relationships`

/** Days since 1899-12-30: the 1900 date system, part 1, section 18.17.4.1. */
function serialOf(day: string): number {
  return (Date.parse(day) - Date.parse('1899-12-30')) / 86_400_000
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;')
}

function cellXml(cell: Cell, ref: string): string {
  if (cell === null) return ''
  if (typeof cell === 'number') return `<c r="${ref}"><v>${cell}</v></c>`
  if (typeof cell === 'string')
    return `<c r="${ref}" t="inlineStr"><is><t>${escaped(cell)}</t></is></c>`
  return `<c r="${ref}" s="1"><v>${serialOf(cell.day)}</v></c>`
}

function sheetXml(rows: readonly (readonly Cell[])[]): string {
  const lines = rows.map((row, at) => {
    const cells = row.map((cell, place) => cellXml(cell, `${'ABCDEFGHIJKLMNOP'[place]}${at + 1}`))
    return `<row r="${at + 1}">${cells.join('')}</row>`
  })
  return `${xml}<worksheet xmlns="${main}"><sheetData>${lines.join('')}</sheetData></worksheet>`
}

const styles = `${xml}<styleSheet xmlns="${main}"><fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="14" applyNumberFormat="1"/></cellXfs></styleSheet>`

/** Sheets by name, each a table of cells. */
export function workbook(sheets: Readonly<Record<string, readonly (readonly Cell[])[]>>): Buffer {
  const names = Object.keys(sheets)
  const type = 'application/vnd.openxmlformats-officedocument.spreadsheetml'
  const each = (line: (name: string, at: number) => string) =>
    names.map((name, at) => line(name, at + 1)).join('')
  return zipped({
    '[Content_Types].xml': `${xml}<Types xmlns="${office}/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="${type}.sheet.main+xml"/><Override PartName="/xl/styles.xml" ContentType="${type}.styles+xml"/>${each((_, at) => `<Override PartName="/xl/worksheets/sheet${at}.xml" ContentType="${type}.worksheet+xml"/>`)}</Types>`,
    '_rels/.rels': `${xml}<Relationships xmlns="${office}/package/2006/relationships"><Relationship Id="rId1" Type="${relations}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    'xl/workbook.xml': `${xml}<workbook xmlns="${main}" xmlns:r="${relations}"><sheets>${each((name, at) => `<sheet name="${escaped(name)}" sheetId="${at}" r:id="rId${at}"/>`)}</sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `${xml}<Relationships xmlns="${office}/package/2006/relationships">${each((_, at) => `<Relationship Id="rId${at}" Type="${relations}/worksheet" Target="worksheets/sheet${at}.xml"/>`)}<Relationship Id="rIdS" Type="${relations}/styles" Target="styles.xml"/></Relationships>`,
    'xl/styles.xml': styles,
    ...Object.fromEntries(
      names.map((name, at) => [`xl/worksheets/sheet${at + 1}.xml`, sheetXml(sheets[name] ?? [])]),
    ),
  })
}

/** A ZIP archive whose members are stored as they are (PKWARE APPNOTE 6.3, sections 4.3.7 to 4.3.16). */
function zipped(files: Readonly<Record<string, string>>): Buffer {
  const parts: Buffer[] = []
  const directory: Buffer[] = []
  let offset = 0
  for (const [name, text] of Object.entries(files)) {
    const [path, body] = [Buffer.from(name), Buffer.from(text)]
    const common = Buffer.alloc(26)
    common.writeUInt16LE(20, 0)
    common.writeUInt32LE(crc32(body), 10)
    common.writeUInt32LE(body.length, 14)
    common.writeUInt32LE(body.length, 18)
    common.writeUInt16LE(path.length, 22)
    const local = Buffer.concat([Buffer.from('PK\x03\x04', 'latin1'), common, path, body])
    const rest = Buffer.alloc(14)
    rest.writeUInt32LE(offset, 10)
    const made = Buffer.from([20, 0])
    directory.push(Buffer.concat([Buffer.from('PK\x01\x02', 'latin1'), made, common, rest, path]))
    parts.push(local)
    offset += local.length
  }
  const listed = Buffer.concat(directory)
  const end = Buffer.alloc(18)
  end.writeUInt16LE(directory.length, 4)
  end.writeUInt16LE(directory.length, 6)
  end.writeUInt32LE(listed.length, 8)
  end.writeUInt32LE(offset, 12)
  return Buffer.concat([...parts, listed, Buffer.from('PK\x05\x06', 'latin1'), end])
}
