/** Reaching a PostgreSQL server, and saying why it could not be reached. */
import { Kysely, PostgresDialect } from 'kysely'
import pg from 'pg'
import { granted, type Refusal, type Result, refused } from '../../shared-types/result.ts'
import type { Database } from '../schema.ts'

/** Refuses `not-a-server` for anything but a `postgres://` address. */
export function openServer(address: string): Result<Kysely<Database>> {
  if (!/^postgres(ql)?:\/\//.test(address))
    return refused(
      'not-a-server',
      'That is not the address of a PostgreSQL server.',
      'Give one like postgres://name@host:5432/database.',
      'to',
    )
  const pool = new pg.Pool({ connectionString: address, max: 1, connectionTimeoutMillis: 10_000 })
  // A server that goes away tells it here too; the query under way is what fails.
  pool.on('error', () => undefined)
  return granted(new Kysely<Database>({ dialect: new PostgresDialect({ pool }) }))
}

const unreachable = [
  'ECONNREFUSED',
  'ENOTFOUND',
  'EHOSTUNREACH',
  'ETIMEDOUT',
  'ENOENT',
  'EAI_AGAIN',
]

/** The refusal for what a server answered, or that it did not; null if the error is a bug. */
export function serverRefusal(error: unknown): Refusal | null {
  if (!(error instanceof Error)) return null
  const code = 'code' in error ? String(error.code) : ''
  if (unreachable.includes(code) || /timeout|terminated/i.test(error.message)) return notReached
  // Class 28: authorization; 3D000: no such database; 42501: no right. PostgreSQL, appendix A.
  if (/^28|^3D000$|^42501$/.test(code)) return notLetIn
  if (/^(08|53|57|58)/.test(code)) return failed
  return null
}

const again = 'What was published so far is whole; publish again to complete it.'

const notReached: Refusal = {
  code: 'server-not-reached',
  say: 'The server does not answer.',
  next: `Check the address and the network. ${again}`,
}

const notLetIn: Refusal = {
  code: 'server-refused',
  say: 'The server does not let this user publish.',
  next: 'Ask whoever looks after the server for a database and the right to make tables in it.',
}

const failed: Refusal = {
  code: 'server-failed',
  say: 'The server failed while the record was being published.',
  next: again,
}
