/** The moves people make with kits, as they name them. */
import type { KitAccount } from '../../shared-types/kit.ts'

/** Asked of the person: somebody's hands, or wherever the kits are now. */
type Asked = 'hands' | 'holder'

export interface Move {
  readonly name: string
  readonly title: string
  readonly key: string
  readonly from: KitAccount | Asked
  readonly to: KitAccount | 'hands'
  /** What the person's choice is called in the dialog. */
  readonly who: string
  readonly done: (count: string) => string
}

const stock: KitAccount = { in: 'stock' }

export const moves: readonly Move[] = [
  {
    name: 'Give out',
    title: 'Give kits to a sampler',
    key: 'G',
    from: stock,
    to: 'hands',
    who: 'Into the hands of',
    done: (count) => `${count} given out of stock.`,
  },
  {
    name: 'Take back',
    title: 'Take kits back into stock',
    key: 'B',
    from: 'hands',
    to: stock,
    who: 'Out of the hands of',
    done: (count) => `${count} back in stock.`,
  },
  {
    name: 'Delivery',
    title: 'Kits delivered to the station',
    key: 'D',
    from: { in: 'delivered' },
    to: stock,
    who: '',
    done: (count) => `${count} added to stock.`,
  },
  {
    name: 'Spoiled',
    title: 'Kits spoiled: torn, wet or dropped',
    key: 'S',
    from: 'holder',
    to: { in: 'spoiled' },
    who: 'They were',
    done: (count) => `${count} written down as spoiled.`,
  },
  {
    name: 'Missing',
    title: 'Kits that cannot be found',
    key: 'M',
    from: 'holder',
    to: { in: 'missing' },
    who: 'They were',
    done: (count) => `${count} written down as missing.`,
  },
  {
    name: 'To another desk',
    title: 'Kits given to another desk of this station',
    key: 'O',
    from: stock,
    to: { in: 'other-desk' },
    who: '',
    done: (count) => `${count} given to another desk.`,
  },
  {
    name: 'From another desk',
    title: 'Kits brought from another desk of this station',
    key: 'I',
    from: { in: 'other-desk' },
    to: stock,
    who: '',
    done: (count) => `${count} brought, and in stock.`,
  },
  {
    name: 'Found',
    title: 'Missing kits found again',
    key: 'F',
    from: { in: 'missing' },
    to: stock,
    who: '',
    done: (count) => `${count} found and back in stock.`,
  },
]

/** Which balances the person may choose from, if the move asks. */
export function choicesOf(move: Move): readonly KitAccount['in'][] {
  if (move.from === 'holder') return ['stock', 'hands']
  return move.from === 'hands' || move.to === 'hands' ? ['hands'] : []
}

/** The two accounts of a move once the person has chosen. */
export function accountsOf(
  move: Move,
  chosen: KitAccount | undefined,
): { from: KitAccount; to: KitAccount } | undefined {
  const from = typeof move.from === 'string' ? chosen : move.from
  const to = typeof move.to === 'string' ? chosen : move.to
  return from && to ? { from, to } : undefined
}
