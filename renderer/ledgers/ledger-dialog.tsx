import { useState } from 'react'
import type { LedgerAccount, LedgerLine, LedgerName } from '../../shared-types/views/ledger.ts'
import { useAsk } from '../desk/use-desk.ts'
import { Choice } from '../parts/choice.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { type Column, Table } from '../parts/table.tsx'
import { Time } from '../parts/time.tsx'
import './ledgers.css'

const ledgers: { value: LedgerName; label: string; key: string }[] = [
  { value: 'kits', label: 'Kits', key: '1' },
  { value: 'labels', label: 'Labels', key: '2' },
  { value: 'bags', label: 'Bags', key: '3' },
]

/** The accounts of a ledger; each balance opens to the entries behind it. */
export function LedgerDialog(props: { first: LedgerName; onClose: () => void }) {
  const [ledger, setLedger] = useState<LedgerName>(props.first)
  const [account, setAccount] = useState<string | null>(null)
  const { data, refusal } = useAsk('ledger', { ledger, account })
  const opened = data?.accounts.find(({ key }) => key === account)
  return (
    <Dialog title="Ledgers" onClose={props.onClose} isWide>
      <Choice
        label="Which ledger"
        options={ledgers}
        value={ledger}
        onChange={(next) => {
          setLedger(next)
          setAccount(null)
        }}
        autoFocus
      />
      <RefusalNote refusal={refusal} />
      <div className="ledgers">
        {data && (
          <Accounts accounts={data.accounts} opened={account} onOpen={setAccount} ledger={ledger} />
        )}
        {data && opened && <Lines account={opened} lines={data.lines} count={data.lineCount} />}
      </div>
    </Dialog>
  )
}

function Accounts(props: {
  accounts: readonly LedgerAccount[]
  ledger: LedgerName
  opened: string | null
  onOpen: (key: string) => void
}) {
  const { accounts, ledger, opened, onOpen } = props
  return (
    <div>
      <h3>Where all {ledger} are</h3>
      <ul className="ledgers-accounts">
        {accounts.map(({ key, words, balance, outside }) => (
          <li key={key}>
            <button
              type="button"
              className="ledgers-account"
              aria-pressed={key === opened}
              onClick={() => onOpen(key)}
            >
              <span>{outside ? `${words} in all` : words}</span>
              <b className="numbers">{balance}</b>
            </button>
          </li>
        ))}
      </ul>
      <p className="close-tries">
        The accounts add up to what came in. Open one to see the entries behind it.
      </p>
    </div>
  )
}

const signed = (count: number) => (count > 0 ? `+${count}` : `−${-count}`)

const columns: readonly Column<LedgerLine>[] = [
  { head: 'When', cell: ({ ms, by }) => <LineTime ms={ms} by={by} /> },
  { head: 'What', cell: ({ say }) => say },
  { head: 'From or to', cell: ({ other }) => other },
  { head: 'Change', cell: ({ delta }) => signed(delta), isNumber: true },
  { head: 'Balance', cell: ({ balance }) => String(balance), isNumber: true },
]

function LineTime({ ms, by }: { ms: number; by: string }) {
  return (
    <>
      <Time ms={ms} /> {by}
    </>
  )
}

function Lines(props: { account: LedgerAccount; lines: readonly LedgerLine[]; count: number }) {
  const { account, lines, count } = props
  return (
    <div>
      <h3>
        {account.words}: the entries behind <span className="numbers">{account.balance}</span>
      </h3>
      {count > lines.length && (
        <p>
          The last {lines.length} of {count} entries.
        </p>
      )}
      <Table
        caption={`Entries behind ${account.words}`}
        columns={columns}
        rows={lines}
        rowKey={(line) => `${line.ms} ${line.say} ${line.other} ${line.balance}`}
      />
    </div>
  )
}
