/**
 * A desk small enough to see through: people sign in per window and leave notes. What a host does
 * with sessions, faults and news shows better here than in the desk of a station.
 */
import type { Desk, Session } from '../../../electron/desk/desk.ts'
import { granted, type Result, refused } from '../../../shared-types/result.ts'

export interface NotebookDesk extends Desk {
  readonly sessions: ReadonlySet<Session>
  readonly notes: readonly string[]
  /** Where faults were noted. */
  readonly faults: readonly string[]
}

export function createNotebookDesk(): NotebookDesk {
  const sessions = new Set<Session>()
  const people = new Map<Session, string>()
  const notes: string[] = []
  const faults: string[] = []
  const listeners = new Set<(topics: readonly string[]) => void>()

  const commands = new Map<string, (session: Session, input: unknown) => Result<unknown>>([
    ['who', (session) => granted(people.get(session) ?? 'nobody')],
    ['notes', () => granted(notes)],
    ['person.signIn', (session, input) => granted(people.set(session, String(input)).size)],
    [
      'note.add',
      (session, input) => addNote(`${people.get(session) ?? 'nobody'}: ${String(input)}`),
    ],
  ])

  function addNote(note: string): Result<unknown> {
    notes.push(note)
    for (const listener of listeners) listener(['notes'])
    return granted(notes.length)
  }

  return {
    sessions,
    notes,
    faults,
    openSession() {
      const session = { id: String(sessions.size), person: null }
      sessions.add(session)
      return session
    },
    closeSession: (session) => {
      sessions.delete(session)
    },
    async call(session: Session, name: string, input: unknown): Promise<Result<never>> {
      if (name === 'fault') throw new Error('SQLITE_CORRUPT: database disk image is malformed')
      const command = commands.get(name)
      const result = command?.(session, input)
      // The desk's own type ties each name of its contract to an answer; these names are not in it.
      return (result ?? refused('no-such-command', `No ${name}.`, 'Ask for another.')) as never
    },
    watch(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    offerBackupFolder: () => {},
    offerLogsFolder: () => {},
    noteFault: (where) => void faults.push(where),
    close: async () => {},
  }
}
