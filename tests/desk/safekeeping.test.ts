import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test, vi } from 'vitest'
import { readLog } from '../../db/log/read-log.ts'
import { verifyLog } from '../../db/log/verify.ts'
import { factsOf, leadPin } from '../support/desk.ts'
import { Laptop, logsIn, tempFolder } from './two-laptops.ts'

const contact = { name: 'Wren Ostler', phone: '555-0142-77', email: '' }
const passphrase = 'four tall spruces burning'

async function laptopWithBackup() {
  const [laptop, stick] = [new Laptop('one'), tempFolder()]
  await laptop.setUp()
  await laptop.plugIn(stick)
  const [file = ''] = laptop.logs
  return { laptop, stick, file }
}

const checkIn = (laptop: Laptop) =>
  laptop.ask('animal.checkIn', { facts: factsOf(), contact: null })

function whole(path: string): { whole: boolean; entries: number } {
  const log = readLog(path)
  if (!log.ok) throw new Error(log.refusal.say)
  const report = verifyLog(log.value)
  log.value.close()
  return { whole: report.whole, entries: report.entries }
}

// A copy takes a tenth of the time at most, so on a busy machine the next one may be long in coming.
const patience = { timeout: 100_000 }

test(
  'a backup follows each change by itself, and says when the last good one was',
  patience,
  async () => {
    const { laptop, stick, file } = await laptopWithBackup()
    const before = whole(join(stick, file)).entries
    laptop.now += 60_000
    await checkIn(laptop)
    await vi.waitFor(() => expect(whole(join(stick, file)).entries).toBe(before + 1), 90_000)
    await vi.waitFor(async () => {
      const { last } = await laptop.ask('backup', {})
      expect(last).toEqual({ atMs: laptop.now, entries: before + 1 })
    }, 10_000)
    expect(readdirSync(stick)).toEqual([file])
  },
)

test('the place of backups is remembered, by name only as far as a screen is told', async () => {
  const { laptop, stick } = await laptopWithBackup()
  const look = await laptop.ask('backup', {})
  expect(JSON.stringify(look)).not.toContain(stick)
  await laptop.desk.close()
  const again = new Laptop('one', { folder: laptop.folder })
  expect((await again.ask('backup', {})).place).toEqual(look.place)
})

test('a stick that is gone is told, and the desk catches up when it is back', async () => {
  const { laptop, stick, file } = await laptopWithBackup()
  rmSync(stick, { recursive: true })
  await checkIn(laptop)
  const gone = await laptop.refusal('backup.now', {})
  expect(gone.code).toBe('stick-gone')
  expect((await laptop.ask('backup', {})).trouble?.say).toBe(gone.say)
  mkdirSync(stick)
  const { entries } = await laptop.ask('backup.now', {})
  expect(whole(join(stick, file))).toEqual({ whole: true, entries })
  expect((await laptop.ask('backup', {})).trouble).toBeNull()
})

test('a backup that holds more than the log is never written over', async () => {
  const { laptop, stick, file } = await laptopWithBackup()
  const early = readFileSync(join(stick, file))
  await checkIn(laptop)
  await laptop.ask('backup.now', {})
  await laptop.desk.close()
  const older = new Laptop('one')
  writeFileSync(join(older.folder, file), early)
  await older.ask('shelf.open', { file })
  older.desk.offerBackupFolder(stick)
  const place = (await older.ask('backup', {})).others[0]?.mark ?? ''
  await older.signIn()
  expect((await older.refusal('backup.choose', { place })).code).toBe('backup-holds-more')
})

test('the drill restores a backup apart, checks it from end to end, and tells how far it is behind', async () => {
  const { laptop, stick, file } = await laptopWithBackup()
  const drill = await laptop.ask('backup.drill', {})
  expect(drill).toMatchObject({ file, behind: 0, whole: true, findings: [] })
  expect(readdirSync(stick)).toEqual([file])
  writeFileSync(join(stick, file), readFileSync(join(stick, file)).subarray(0, 8192))
  expect((await laptop.refusal('backup.drill', {})).code).toBe('torn')
})

test('a damaged log is set aside and its backup brought back; a sound one is left alone', async () => {
  const { laptop, file } = await laptopWithBackup()
  expect((await laptop.refusal('backup.restore', { file })).code).toBe('log-is-sound')
  await laptop.ask('shelf.shut', {})
  writeFileSync(join(laptop.folder, file), 'SQLite format 3\0 and then nothing')
  await laptop.ask('backup.restore', { file })
  await laptop.ask('shelf.open', { file })
  expect(readdirSync(laptop.folder)).toContain(`${file}.damaged-1`)
  expect((await laptop.refusal('backup.restore', { file: '../x.stationlog' })).code).toBe(
    'not-found',
  )
})

test('a copy of a desk that lives on another laptop is not gone on with', async () => {
  const { stick, file } = await laptopWithBackup()
  const other = new Laptop('two')
  other.copyIn(stick, file)
  expect((await other.refusal('shelf.open', { file })).code).toBe('lives-elsewhere')
})

test('when the laptop is lost a lead takes the desk over elsewhere, with their PIN and a reason', async () => {
  const { stick, file } = await laptopWithBackup()
  const other = new Laptop('two')
  other.copyIn(stick, file)
  const reason = 'dropped into the river'
  const wrong = { file, pin: '9999', reason }
  expect((await other.refusal('desk.takeOver', wrong)).code).toBe('pin-wrong')
  expect((await other.ask('shelf.look', {})).open).toBeNull()
  await other.ask('desk.takeOver', { file, pin: leadPin, reason })
  await checkIn(other)
  await other.desk.close()
  expect(whole(join(other.folder, file)).whole).toBe(true)
  const again = new Laptop('two', { folder: other.folder })
  await again.ask('shelf.open', { file })
})

test('a desk moves in order: here it stops, on the other laptop it goes on with every entry', async () => {
  const { laptop, stick, file } = await laptopWithBackup()
  await checkIn(laptop)
  const { file: moved } = await laptop.ask('desk.moveOut', { pin: leadPin })
  expect((await laptop.refusal('shelf.open', { file })).code).toBe('moved-away')
  const other = new Laptop('two')
  other.copyIn(stick, moved)
  await other.ask('shelf.open', { file: moved })
  await other.desk.close()
  expect(whole(join(other.folder, moved)).entries).toBe(whole(join(laptop.folder, file)).entries)
  const third = new Laptop('three', { folder: other.folder })
  expect((await third.refusal('shelf.open', { file: moved })).code).toBe('lives-elsewhere')
})

test('of two copies on one shelf, the one that stopped earlier is not gone on with', async () => {
  const { laptop, stick, file } = await laptopWithBackup()
  writeFileSync(join(laptop.folder, `copy-${file}`), readFileSync(join(stick, file)))
  await checkIn(laptop)
  expect((await laptop.refusal('shelf.open', { file: `copy-${file}` })).code).toBe('older-copy')
  await laptop.ask('shelf.open', { file })
})

test('a contact is nowhere in the file, its WAL or the backup in words that can be read', async () => {
  const { laptop, stick, file } = await laptopWithBackup()
  await laptop.ask('animal.checkIn', { facts: factsOf(), contact })
  await laptop.ask('backup.now', {})
  for (const path of [
    join(laptop.folder, file),
    join(laptop.folder, `${file}-wal`),
    join(stick, file),
  ])
    expect(readFileSync(path, 'latin1')).not.toContain('0142-77')
})

test('with the passphrase the contacts can be read on the other laptop, and not without', async () => {
  const { laptop, stick } = await laptopWithBackup()
  const { animal } = await laptop.ask('animal.checkIn', { facts: factsOf(), contact })
  expect((await laptop.refusal('desk.moveOut', { pin: leadPin })).code).toBe('passphrase-first')
  await laptop.ask('contacts.setPassphrase', { passphrase, keepKeyHere: true })
  const { file } = await laptop.ask('desk.moveOut', { pin: leadPin })
  const other = new Laptop('two')
  other.copyIn(stick, file)
  await other.ask('shelf.open', { file })
  await other.signIn()
  expect((await other.ask('animal', { animal })).contact).toBeNull()
  expect(await other.ask('contacts', {})).toEqual({ kept: 1, seal: 'locked', hasPassphrase: true })
  const locked = await other.refusal('animal.checkIn', { facts: factsOf(), contact })
  expect(locked.code).toBe('contacts-locked')
  const wrong = await other.refusal('contacts.unlock', { passphrase: 'four tall spruces' })
  expect(wrong.code).toBe('passphrase-wrong')
  await other.ask('contacts.unlock', { passphrase })
  expect((await other.ask('animal', { animal })).contact).toEqual(contact)
})

test('a key taken off the laptop opens nothing after the next start until the passphrase is typed', async () => {
  const laptop = new Laptop('one')
  await laptop.setUp()
  await laptop.ask('animal.checkIn', { facts: factsOf(), contact })
  await laptop.ask('contacts.setPassphrase', { passphrase, keepKeyHere: false })
  expect((await laptop.ask('contacts', {})).seal).toBe('memory')
  const [file = ''] = logsIn(laptop.folder)
  await laptop.desk.close()
  const again = new Laptop('one', { folder: laptop.folder })
  await again.ask('shelf.open', { file })
  expect((await again.ask('contacts', {})).seal).toBe('locked')
})

test('where the system has a key store, the key on the disk is sealed by it', async () => {
  const keyStore = {
    seal: (text: string) => Buffer.from(text).map((byte) => byte ^ 0x5a),
    open: (sealed: Uint8Array) => Buffer.from(sealed.map((byte) => byte ^ 0x5a)).toString(),
  }
  const laptop = new Laptop('one', { keyStore })
  await laptop.setUp()
  const { animal } = await laptop.ask('animal.checkIn', { facts: factsOf(), contact })
  expect(await laptop.ask('contacts', {})).toMatchObject({ kept: 1, seal: 'key-store' })
  const [file = ''] = logsIn(laptop.folder)
  await laptop.desk.close()
  const again = new Laptop('one', { folder: laptop.folder, keyStore })
  await again.ask('shelf.open', { file })
  await again.signIn()
  expect((await again.ask('animal', { animal })).contact).toEqual(contact)
})

test('purged contacts leave the file, its WAL and the backup, and the log still verifies', async () => {
  const { laptop, stick, file } = await laptopWithBackup()
  const { animal } = await laptop.ask('animal.checkIn', { facts: factsOf(), contact })
  await laptop.ask('backup.now', {})
  const sealed = readLogContact(join(stick, file))
  expect(readFileSync(join(stick, file), 'latin1')).toContain(sealed)
  const upTo = '2026-11-14' as never
  const purged = await laptop.ask('contacts.purge', { upTo, pin: leadPin })
  expect(purged).toMatchObject({ contacts: 1, clean: true, backup: true, whole: true })
  for (const path of [
    join(laptop.folder, file),
    join(laptop.folder, `${file}-wal`),
    join(stick, file),
  ])
    expect(readFileSync(path, 'latin1')).not.toContain(sealed)
  expect(await laptop.ask('animal', { animal })).toMatchObject({ hasContact: true, contact: null })
})

function readLogContact(path: string): string {
  const text = readFileSync(path, 'latin1')
  const salt = /[0-9a-f]{16}\.[\w+/]{16}/.exec(text)?.[0]
  if (!salt) throw new Error('no sealed contact in the file')
  return salt
}

test('contacts of days after the one named are kept', async () => {
  const laptop = new Laptop('one')
  await laptop.setUp()
  await laptop.ask('animal.checkIn', { facts: factsOf(), contact })
  const upTo = '2026-11-13' as never
  expect((await laptop.ask('contacts.purge', { upTo, pin: leadPin })).contacts).toBe(0)
  expect((await laptop.ask('contacts', {})).kept).toBe(1)
})

test('a window left alone for a quarter of an hour is locked; looking on counts as being there', async () => {
  const laptop = new Laptop('one')
  await laptop.setUp()
  laptop.uptime += 14 * 60_000
  await laptop.ask('person.here', {})
  laptop.uptime += 14 * 60_000
  expect((await laptop.ask('who', {})).person).not.toBeNull()
  // The laptop's clock, which anyone may set, has no say in it.
  laptop.now += 24 * 3_600_000
  expect((await laptop.ask('who', {})).person).not.toBeNull()
  laptop.uptime += 2 * 60_000
  expect((await laptop.ask('who', {})).person).toBeNull()
})

test('a log of a newer version is shown, said to be read only, and not written in', async () => {
  const { laptop, file } = await laptopWithBackup()
  const { animal } = await checkIn(laptop)
  await laptop.desk.close()
  const path = join(laptop.folder, file)
  const bytes = readFileSync(path)
  // Bytes 60 to 63 of the header are the user version (sqlite.org/fileformat2.html, section 1.3).
  bytes.writeInt32BE(9990, 60)
  writeFileSync(path, bytes)
  const again = new Laptop('one', { folder: laptop.folder })
  await again.ask('shelf.open', { file })
  expect(await again.ask('shelf.look', {})).toMatchObject({ open: file, readOnly: true })
  await again.signIn()
  expect((await again.ask('animal', { animal })).animal).toBe(animal)
  const refused = await again.refusal('animal.checkIn', { facts: factsOf(), contact: null })
  expect(refused.code).toBe('newer-version')
  await again.desk.close()
  expect(readFileSync(path).equals(bytes)).toBe(true)
})

test('the report names what was refused and how the program fares, and nobody', async () => {
  const { laptop } = await laptopWithBackup()
  const facts = factsOf({ hunter: 'H77120', tag: 'T99911' })
  await laptop.ask('animal.checkIn', { facts, contact })
  await laptop.refusal('animal.checkIn', { facts, contact })
  laptop.desk.noteFault('animal.checkIn', new TypeError('no such tag T99911 of Wren Ostler'))
  const { text } = await laptop.ask('report', {})
  expect(text).toContain('tag-already-here')
  expect(text).toContain('TypeError')
  for (const word of ['T99911', 'H77120', 'Wren', 'Orla', '555', laptop.folder, leadPin])
    expect(text).not.toContain(word)
})

test('the light chosen on this laptop is still there after the next start', async () => {
  const laptop = new Laptop('one')
  expect(await laptop.ask('light', {})).toEqual({ light: null })
  await laptop.ask('light.choose', { light: 'night' })
  const again = new Laptop('one', { folder: laptop.folder })
  expect(await again.ask('light', {})).toEqual({ light: 'night' })
})

test('the board is shown without anyone signed in, and tells no hunter and no tag', async () => {
  const laptop = new Laptop('one')
  await laptop.setUp()
  const facts = factsOf({ hunter: 'H77120', tag: 'T99911' })
  const { animal } = await laptop.ask('animal.checkIn', { facts, contact })
  await laptop.ask('person.lock', {})
  const board = await laptop.ask('board', {})
  expect(board.waiting.map((each) => each.animal)).toEqual([animal])
  expect(JSON.stringify(board)).not.toMatch(/H77120|T99911|Ostler/)
})
