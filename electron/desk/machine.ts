/** What a host knows of the laptop it runs on. */

/** The operating system's own store of keys; Electron reaches it, a browser does not. */
export interface KeyStore {
  /** Seals a text so that only this user of this laptop can read it. */
  readonly seal: (text: string) => Uint8Array
  /** Throws for what another user or laptop sealed. */
  readonly open: (sealed: Uint8Array) => string
}

export interface Machine {
  /** Tells this laptop from every other, and says nothing else about it. */
  readonly laptop: string
  /** Milliseconds since the program started, by a clock that nobody can set. */
  readonly uptime: () => number
  readonly keyStore?: KeyStore
  /** For the report: the program's version, the window it shows, the system, the runtime. */
  readonly about: Readonly<Record<string, string>>
}

/** No laptop in particular, as when a practice day is played: the log is then free to be taken. */
export const nowhere: Machine = { laptop: 'free', uptime: () => 0, about: {} }
