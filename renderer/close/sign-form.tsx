import type { LocalDate } from '../../shared-types/local-date.ts'
import type { CloseView } from '../../shared-types/views/close.ts'
import { useMay, useTell } from '../desk/use-desk.ts'
import { Notice } from '../parts/notice.tsx'
import { Panel } from '../parts/panel.tsx'
import { sayDone } from '../scanner/strip.ts'
import { Signatures } from './signatures.tsx'
import { useCloseSheet } from './use-close-sheet.ts'

interface SignFormProps {
  date: LocalDate
  second: CloseView['second']
  open: CloseView['open']
  isHere: boolean
  onTooEarly: () => void
}

/** The lead signs the day with their PIN, a second person with theirs, and the close sheet opens. */
export function SignForm(props: SignFormProps) {
  const maySign = useMay('day.close')
  if (maySign) return <LeadSigns {...props} />
  return (
    <Panel title="Signatures">
      <Notice kind="info">
        Only the lead signs. Change person (Ctrl+L); everything counted so far is kept.
      </Notice>
    </Panel>
  )
}

function LeadSigns({ date, ...rest }: SignFormProps) {
  const { tell, busy, refusal } = useTell('day.close')
  const openSheet = useCloseSheet()
  return (
    <Signatures
      {...rest}
      deed="Sign and close the day"
      busy={busy}
      refusal={refusal}
      onSign={async (signing) => {
        const answer = await tell(signing)
        if (answer.ok) {
          sayDone('The day is closed and signed.')
          await openSheet({ date })
        }
        return answer
      }}
    />
  )
}
