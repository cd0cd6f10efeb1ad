/** Whether someone has been shown round on this laptop. */
import { granted } from '../../shared-types/result.ts'
import type { ShelfHandlers } from './call.ts'

export const tourCalls = {
  tour: ({ kept }) => granted({ taken: kept.choices.now.toured }),
  'tour.take': ({ kept, tell }, { again }) => {
    kept.choices.change({ toured: !again })
    tell(['tour'])
    return granted({})
  },
} satisfies Partial<ShelfHandlers>
