/** Gives every screen of this window its connection, and asks again when the desk says what changed. */
import { QueryClient, QueryClientProvider } from '@tanstack/react-query'
import { type ReactNode, createContext, useContext, useEffect, useState } from 'react'
import { anyTopic } from '../../shared-types/bridge.ts'
import { type Topic, deskApi, isCallName } from '../../shared-types/desk-api.ts'
import type { Connection } from '../bridge/connect.ts'

const ConnectionContext = createContext<Connection | undefined>(undefined)

/** The connection of this window. */
export function useConnection(): Connection {
  const connection = useContext(ConnectionContext)
  if (connection === undefined) throw new Error('a screen stands outside its DeskProvider')
  return connection
}

/**
 * Nothing is asked twice without cause: the desk tells what changed. The browser's idea of being
 * online is ignored, since the desk is on this very computer.
 */
function createClient(): QueryClient {
  return new QueryClient({
    defaultOptions: {
      queries: {
        staleTime: Number.POSITIVE_INFINITY,
        retry: false,
        networkMode: 'always',
        refetchOnWindowFocus: false,
        refetchOnReconnect: false,
      },
    },
  })
}

const shelf: Topic = 'shelf'
/** Topics after which everything shown may be out of date, or another person's. */
const everything: readonly (Topic | typeof anyTopic)[] = [anyTopic, 'who']

function isTouched(name: unknown, topics: readonly string[]): boolean {
  if (typeof name !== 'string' || !isCallName(name)) return false
  return deskApi[name].topics.some((topic) => topics.includes(topic))
}

async function refresh(client: QueryClient, topics: readonly string[]): Promise<void> {
  // Another log: nothing of the last one may stay on the screen, not even for a moment.
  if (topics.includes(shelf)) return client.resetQueries()
  const all = everything.some((topic) => topics.includes(topic))
  await client.invalidateQueries({
    predicate: ({ queryKey }) => all || isTouched(queryKey[0], topics),
  })
}

export function DeskProvider(props: { connection: Connection; children: ReactNode }) {
  const { connection, children } = props
  const [client] = useState(createClient)
  useEffect(() => connection.watch((topics) => void refresh(client, topics)), [connection, client])
  return (
    <ConnectionContext value={connection}>
      <QueryClientProvider client={client}>{children}</QueryClientProvider>
    </ConnectionContext>
  )
}
