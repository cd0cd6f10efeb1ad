/** What a query and a command of the desk API are made of. */
import type { z } from 'zod'
import type { Topic } from './desk-api.ts'

export function query<I extends z.ZodType, O extends z.ZodType>(
  input: I,
  output: O,
  topics: readonly Topic[],
) {
  return { is: 'query', input, output, topics } as const
}

export function command<I extends z.ZodType, O extends z.ZodType>(input: I, output: O) {
  return { is: 'command', input, output, topics: [] as readonly Topic[] } as const
}
