/**
 * Publishing: a merged record put into a PostgreSQL server, so that many offices query one database.
 * The entries on the server are the union of what offices published; its read tables are folded from
 * that union, whoever published last. How to reach hunters, PINs and keys never leave the log.
 */
import { type Kysely, sql, type Transaction } from 'kysely'
import { granted, type Result } from '../../shared-types/result.ts'
import { connectInMemory, connectionOf, ReadableLog } from '../connection.ts'
import { makeTables } from '../log/create.ts'
import { refold } from '../log/rebuild.ts'
import { provedRow } from '../merge/row-proof.ts'
import { latestFormat } from '../migrations/list.ts'
import type { Database, EntryTable } from '../schema.ts'
import { openServer, serverRefusal } from './server.ts'
import { entryTable, keyOf, makeTable, readTables, type ServerTable } from './server-tables.ts'

export interface Published {
  /** Entries on the server now. */
  readonly entries: number
  /** Entries that this publishing brought. */
  readonly added: number
  /** Entries on the server that the log does not have: other offices published them. */
  readonly ofOthers: number
  /** Rows written into the read tables. */
  readonly rows: number
}

type Told = (what: string, share: number) => void

/**
 * Publishes a log to `postgres://...`. Doing it again changes nothing. Each batch is one transaction;
 * stopped half way, the server holds whole batches, and the next publishing completes them.
 *
 * Refuses `server-not-reached`, `server-refused` (no right to enter or to make tables) or
 * `server-failed`.
 */
export async function publishLog(
  log: ReadableLog,
  address: string,
  told: Told = () => undefined,
): Promise<Result<Published>> {
  const opened = openServer(address)
  if (!opened.ok) return opened
  const server = opened.value
  try {
    return granted(await published(server, log, told))
  } catch (error) {
    const refusal = serverRefusal(error)
    if (refusal === null) throw error
    return { ok: false, refusal }
  } finally {
    await server.destroy()
  }
}

/** Any number that other programs on the server do not use as their lock: 'Dusk' in ASCII. */
const lock = 0x4475736b

async function published(
  server: Kysely<Database>,
  log: ReadableLog,
  told: Told,
): Promise<Published> {
  const entries = entryTable(log)
  // Two offices publishing at once would fold two different unions into the same tables.
  return server.connection().execute(async (session) => {
    await sql`SELECT pg_advisory_lock(${sql.lit(lock)})`.execute(session)
    try {
      for (const table of [entries, ...readTables(log)]) await makeTable(session, table)
      const before = await countOn(session)
      await sendTable(session, entries, rowsOf(log, 'entry'), (share) => told('entries', share))
      const after = await countOn(session)
      const union = await withThoseOfOthers(session, log, after)
      let rows = 0
      for (const table of readTables(union.log))
        rows += await sendTable(session, table, rowsOf(union.log, table.name), (share) =>
          told(table.name, share),
        )
      if (union.log !== log) union.log.close()
      return { entries: after, added: after - before, ofOthers: union.ofOthers, rows }
    } finally {
      await sql`SELECT pg_advisory_unlock(${sql.lit(lock)})`.execute(session)
    }
  })
}

async function countOn(session: Kysely<Database>): Promise<number> {
  const row = await session
    .selectFrom('entry')
    .select((eb) => eb.fn.countAll<string>().as('entries'))
    .executeTakeFirstOrThrow()
  return Number(row.entries)
}

function rowsOf(log: ReadableLog, table: string): IterableIterator<Record<string, unknown>> {
  return connectionOf(log)
    .prepare<[], Record<string, unknown>>(`SELECT * FROM "${table}"`)
    .iterate()
}

/** PostgreSQL takes at most 65,535 values a statement. */
const mostValues = 60_000

async function sendTable(
  session: Kysely<Database>,
  table: ServerTable,
  rows: Iterable<Record<string, unknown>>,
  told: (share: number) => void,
): Promise<number> {
  const batchSize = Math.min(2000, Math.floor(mostValues / table.columns.length))
  let [sent, batch]: [number, Record<string, unknown>[]] = [0, []]
  const send = async () => {
    if (batch.length === 0) return
    await session.transaction().execute((tx) => sendBatch(tx, table, batch))
    sent += batch.length
    told(sent / (sent + batchSize))
    batch = []
  }
  for (const row of rows) {
    batch.push(row)
    if (batch.length === batchSize) await send()
  }
  await send()
  return sent
}

/** An entry is never changed; a row of a read table is what the union of entries now says. */
async function sendBatch(
  tx: Transaction<Database>,
  table: ServerTable,
  batch: readonly Record<string, unknown>[],
): Promise<void> {
  const key = keyOf(table)
  const rest = table.columns.map(({ name }) => name).filter((name) => !key.includes(name))
  const insert = tx.insertInto(table.name).values(batch as never)
  const isFixed = table.name === 'entry' || rest.length === 0
  await insert
    .onConflict((conflict) => {
      const on = conflict.columns(key as never)
      return isFixed
        ? on.doNothing()
        : on.doUpdateSet(
            Object.fromEntries(rest.map((name) => [name, sql.ref(`excluded.${name}`)])) as never,
          )
    })
    .execute()
}

/** The log to fold: this one, or where the server has entries of others too, the union in memory. */
async function withThoseOfOthers(
  session: Kysely<Database>,
  log: ReadableLog,
  onServer: number,
): Promise<{ log: ReadableLog; ofOthers: number }> {
  const here =
    connectionOf(log).prepare<[], number>('SELECT count(*) FROM entry').pluck().get() ?? 0
  if (onServer === here) return { log, ofOthers: 0 }
  const union = new ReadableLog(connectInMemory(), log.path, log.desk, latestFormat)
  const connection = connectionOf(union)
  connection.transaction(() => makeTables(connection, log.desk))()
  const add = connection.prepare(
    'INSERT OR IGNORE INTO entry (desk, seq, ms, n, wall, "by", kind, v, body, prev, hash) VALUES (@desk, @seq, @ms, @n, @wall, @by, @kind, @v, @body, @prev, @hash)',
  )
  connection.transaction(() => {
    for (const row of rowsOf(log, 'entry')) add.run(row)
  })()
  for await (const row of entriesOnServer(session)) {
    const proved = provedRow(row)
    if (proved !== null) add.run(proved)
  }
  connection.transaction(() => refold(union, connection))()
  return { log: union, ofOthers: onServer - here }
}

/** Every entry on the server, desk after desk and a thousand at a time; the log may know some of them. */
async function* entriesOnServer(session: Kysely<Database>): AsyncGenerator<EntryTable> {
  const desks = await session.selectFrom('entry').select('desk').distinct().execute()
  for (const { desk } of desks) yield* entriesOfDesk(session, desk)
}

async function* entriesOfDesk(
  session: Kysely<Database>,
  desk: EntryTable['desk'],
): AsyncGenerator<EntryTable> {
  let after = { seq: 0, hash: '' }
  for (;;) {
    const rows = await session
      .selectFrom('entry')
      .selectAll()
      .where('desk', '=', desk)
      .where(sql<boolean>`(seq, hash) > (${after.seq}, ${after.hash})`)
      .orderBy('seq')
      .orderBy('hash')
      .limit(1000)
      .execute()
    const last = rows.at(-1)
    if (!last) return
    yield* rows.map(numbered)
    after = { seq: Number(last.seq), hash: last.hash }
  }
}

/** PostgreSQL's 64-bit whole numbers come as text. */
function numbered(row: EntryTable): EntryTable {
  const { seq, ms, n, wall, v } = row
  return {
    ...row,
    seq: Number(seq),
    ms: Number(ms),
    n: Number(n),
    wall: Number(wall),
    v: Number(v),
  }
}
