import { useState } from 'react'
import type { AccountBalance } from '../../shared-types/views/kits.ts'
import { DeedDialog } from '../parts/deed-dialog.tsx'
import { saidAt } from '../parts/said-at.ts'
import { useTell } from '../desk/use-desk.ts'
import { Choice } from '../parts/choice.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import { type Move, accountsOf, choicesOf } from './moves.ts'
import { holderName } from './words.ts'

function optionsOf(balances: readonly AccountBalance[]) {
  return balances.map((balance, place) => ({
    value: balance.key,
    label: holderName(balance),
    hint: `has ${balance.count}`,
    ...(place < 9 ? { key: String(place + 1) } : {}),
  }))
}

/** One move of the ledger: between whom, how many, and why. */
export function MoveDialog(props: {
  move: Move
  balances: readonly AccountBalance[]
  onClose: () => void
}) {
  const { move, onClose } = props
  const choices = props.balances.filter(({ account }) => choicesOf(move).includes(account.in))
  const [key, setKey] = useState<string | null>(null)
  const [count, setCount] = useState('')
  const [reason, setReason] = useState('')
  const [open, setOpen] = useState<{ who?: string; count?: string }>({})
  const { tell, busy, refusal } = useTell('kits.move')
  async function act() {
    const accounts = accountsOf(move, choices.find((each) => each.key === key)?.account)
    const isCount = /^[1-9]\d{0,5}$/.test(count.trim())
    setOpen({
      ...(accounts ? {} : { who: 'Choose first.' }),
      ...(isCount ? {} : { count: 'Type how many, in digits.' }),
    })
    if (!accounts || !isCount) return
    const answer = await tell({ ...accounts, count: Number(count), reason })
    if (!answer.ok) return sayRefused(answer.refusal)
    sayDone(move.done(`${count} ${count.trim() === '1' ? 'kit' : 'kits'}`))
    onClose()
  }
  return (
    <DeedDialog
      title={move.title}
      deed={move.name}
      isBusy={busy}
      refusal={refusal}
      fields={['count', 'reason']}
      onDo={act}
      onClose={onClose}
    >
      {choices.length > 0 && (
        <Choice
          label={move.who}
          options={optionsOf(choices)}
          value={key}
          onChange={setKey}
          error={open.who}
          autoFocus
        />
      )}
      <TextEntry
        label="How many"
        value={count}
        onChange={setCount}
        inputMode="numeric"
        maxLength={6}
        numbers
        error={open.count ?? saidAt(refusal, 'count')}
        autoFocus={choices.length === 0}
      />
      <TextEntry
        label="Why, in a few words"
        hint="needed for deliveries, other desks, spoiled, missing and found kits"
        value={reason}
        onChange={setReason}
        maxLength={200}
        error={saidAt(refusal, 'reason')}
      />
    </DeedDialog>
  )
}
