import { useState } from 'react'
import type { AccountBalance } from '../../shared-types/views/kits.ts'
import { useMay } from '../desk/use-desk.ts'
import { OpenLedgers } from '../ledgers/open-ledgers.tsx'
import { Button } from '../parts/button.tsx'
import { Panel } from '../parts/panel.tsx'
import { MoveDialog } from './move-dialog.tsx'
import { type Move, moves } from './moves.ts'
import { holderName } from './words.ts'

/** Where every kit is, and the moves between the places. */
export function Ledger({ balances }: { readonly balances: readonly AccountBalance[] }) {
  const [move, setMove] = useState<Move | null>(null)
  const may = useMay('kits.move')
  return (
    <Panel title="Where the kits are" actions={<OpenLedgers first="kits" />}>
      <div className="moves">
        {moves.map((each, place) => (
          <Button
            key={each.key}
            keyHint={each.key}
            autoFocus={place === 0}
            isDisabled={!may}
            why="the crew moves kits"
            onPress={() => setMove(each)}
          >
            {each.name}
          </Button>
        ))}
      </div>
      <div className="ledger">
        <InStock balances={balances} />
        <InHands balances={balances} />
      </div>
      <Rest balances={balances} />
      {move && <MoveDialog move={move} balances={balances} onClose={() => setMove(null)} />}
    </Panel>
  )
}

function countOf(balances: readonly AccountBalance[], key: string): number {
  return balances.find((balance) => balance.key === key)?.count ?? 0
}

function InStock({ balances }: { readonly balances: readonly AccountBalance[] }) {
  return (
    <p className="in-stock">
      <b className="numbers">{countOf(balances, 'stock')}</b> in stock
    </p>
  )
}

function InHands({ balances }: { readonly balances: readonly AccountBalance[] }) {
  return (
    <ul className="in-hands" aria-label="Kits in hands">
      {balances
        .filter(({ account }) => account.in === 'hands')
        .map((balance) => (
          <li key={balance.key}>
            <b className="numbers">{balance.count}</b> {holderName(balance)}
          </li>
        ))}
    </ul>
  )
}

/** The other accounts, so that the sum can be seen to come out: every kit is in exactly one. */
function Rest({ balances }: { readonly balances: readonly AccountBalance[] }) {
  const rest = balances.filter(
    ({ account }) => !['stock', 'hands', 'delivered'].includes(account.in),
  )
  return (
    <dl className="ledger-rest">
      {rest.map(({ key, words, count }) => (
        <div key={key}>
          <dt>{words}</dt>
          <dd className="numbers">{count}</dd>
        </div>
      ))}
      <div className="ledger-sum">
        <dt>delivered in all</dt>
        <dd className="numbers">{Math.abs(countOf(balances, 'delivered'))}</dd>
      </div>
    </dl>
  )
}
