/**
 * How SQL is run here, and the only way: Kysely builds and types a query, once, when its file is
 * loaded; better-sqlite3 runs the compiled text synchronously, prepared once a connection. Kysely's
 * own asynchronous execution is not used: an `await` inside a transaction would let another command
 * in, and building a query costs more than running it.
 *
 *     const animalOfTag = prepareOne((db, p: Params<{ tag: string }>) =>
 *       db.selectFrom('animal').selectAll().where('tag', '=', p('tag')))
 *     animalOfTag(log, { tag: '4471' })
 */
import type { Statement } from 'better-sqlite3'
import {
  type Compilable,
  DummyDriver,
  Kysely,
  type RawBuilder,
  SqliteAdapter,
  SqliteIntrospector,
  SqliteQueryCompiler,
  sql,
} from 'kysely'
import { type Connection, connectionOf, type ReadableLog } from './connection.ts'
import type { LogTransaction } from './log/append.ts'
import type { Database } from './schema.ts'

/** Names a value that is given when the query runs. */
export interface Params<P extends object> {
  <K extends keyof P & string>(name: K): RawBuilder<P[K]>
}

/** A query that takes no values. */
export type NoParams = Record<never, never>

type Given<P> = keyof P extends never ? [] : [values: Readonly<P>]
type Build<P extends object, Q> = (db: Kysely<Database>, p: Params<P>) => Q
type Selection<Row> = Compilable<Row> & { readonly isSelectQueryBuilder: true }

/**
 * Literals of a query are written into its text: they are constants of the program, and a partial
 * index (`WHERE state = 'reserved'`) serves only a query in which SQLite can see the constant.
 */
class LiteralCompiler extends SqliteQueryCompiler {
  protected override appendValue(value: unknown): void {
    this.appendImmediateValue(value)
  }
}

const compiler = new Kysely<Database>({
  dialect: {
    createAdapter: () => new SqliteAdapter(),
    createDriver: () => new DummyDriver(),
    createIntrospector: (db) => new SqliteIntrospector(db),
    createQueryCompiler: () => new LiteralCompiler(),
  },
})

/** A SELECT of at most one row. */
export function prepareOne<Row, P extends object = NoParams>(build: Build<P, Selection<Row>>) {
  const query = compile(build)
  return (log: ReadableLog, ...given: Given<P>): Row | undefined =>
    query(connectionOf(log)).get(...given) as Row | undefined
}

/** A SELECT of all its rows. */
export function prepareAll<Row, P extends object = NoParams>(build: Build<P, Selection<Row>>) {
  const query = compile(build)
  return (log: ReadableLog, ...given: Given<P>): Row[] =>
    query(connectionOf(log)).all(...given) as Row[]
}

/** A SELECT of one column of all its rows, each a bare value. */
export function prepareColumn<Value, P extends object = NoParams>(
  build: Build<P, Selection<Readonly<Record<string, Value>>>>,
) {
  const query = compile(build)
  return (log: ReadableLog, ...given: Given<P>): Value[] => {
    const statement = query(connectionOf(log))
    return statement.pluck().all(...given) as Value[]
  }
}

/** An INSERT, UPDATE or DELETE, inside a transaction only; answers how many rows it touched. */
export function prepareRun<P extends object = NoParams>(build: Build<P, Compilable>) {
  const query = compile(build)
  return (tx: LogTransaction, ...given: Given<P>): number =>
    query(connectionOf(tx)).run(...given).changes
}

function compile<P extends object>(build: Build<P, Compilable>) {
  const { sql: text } = build(compiler, named).compile()
  return (connection: Connection) => statementOf(connection, text)
}

function named<T>(name: string): RawBuilder<T> {
  return sql<T>`${sql.raw(`@${name}`)}`
}

const statements = new WeakMap<Connection, Map<string, Statement<unknown[]>>>()

/** The prepared statement of an SQL text, made once a connection. */
export function statementOf(connection: Connection, text: string): Statement<unknown[]> {
  const prepared = statements.get(connection) ?? new Map<string, Statement<unknown[]>>()
  if (prepared.size === 0) statements.set(connection, prepared)
  const known = prepared.get(text)
  if (known !== undefined) return known
  const statement = connection.prepare<unknown[]>(text)
  prepared.set(text, statement)
  return statement
}
