import { useState } from 'react'
import { ObexRule, obexRuleWords, type ResultRules } from '../../shared-types/laboratory-result.ts'
import { LocalDate } from '../../shared-types/local-date.ts'
import { useMay, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { Panel } from '../parts/panel.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone } from '../scanner/strip.ts'

/** How the office works with results; what two sides say of an animal is stated here too. */
export function Rules({ rules }: { rules: ResultRules }) {
  const may = useMay('results.setRules')
  const { tell, busy, refusal } = useTell('results.setRules')
  const [obex, setObex] = useState<ObexRule>(rules.obex)
  const [days, setDays] = useState(String(rules.overdueDays))
  const [until, setUntil] = useState<string>(rules.contactsUntil ?? '')
  const [askWhom, setAskWhom] = useState(rules.askWhom)
  const [isTried, setTried] = useState(false)
  const overdueDays = Number(days)
  const isDaysGood = Number.isInteger(overdueDays) && overdueDays >= 1 && overdueDays <= 400
  const day = LocalDate.safeParse(until)
  async function save() {
    setTried(true)
    if (!isDaysGood || busy) return
    const contactsUntil = day.data ?? null
    const set = await tell({ rules: { obex, overdueDays, contactsUntil, askWhom } })
    if (set.ok) sayDone('The rules are set.')
  }
  return (
    <Panel title="Rules">
      <form
        className="stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault()
          void save()
        }}
      >
        <TwoSides />
        <Choice
          label="The obex"
          options={ObexRule.options.map((value, at) => ({
            value,
            label: obexRuleWords[value],
            key: 'abc'[at],
          }))}
          value={obex}
          onChange={setObex}
        />
        <div className="results-fields">
          <TextEntry
            label="Days after which a bag without a result is overdue"
            numbers
            inputMode="numeric"
            maxLength={3}
            value={days}
            onChange={setDays}
            error={isTried && !isDaysGood ? 'A whole number from 1 to 400 is wanted.' : undefined}
          />
          <TextEntry
            label="Contacts are kept until"
            hint="The day your agency's rules say; empty while none is set."
            type="date"
            numbers
            value={until}
            onChange={setUntil}
          />
          <TextEntry
            label="Whom hunters ask"
            hint="As the agency publishes it; it stands in every letter."
            maxLength={200}
            value={askWhom}
            onChange={setAskWhom}
          />
        </div>
        <RefusalNote refusal={refusal} />
        <div>
          <Button
            kind="main"
            type="submit"
            keyHint="Enter"
            isDisabled={busy || !may}
            why={may ? undefined : 'a lead or the office does this'}
          >
            Set the rules
          </Button>
        </div>
      </form>
    </Panel>
  )
}

/** The rule of electron/station/animal-result.ts, in words. */
function TwoSides() {
  return (
    <div>
      <h3>Two sides, one animal</h3>
      <ol className="results-rule">
        <li>Detected, if any sample is detected, whatever the others say.</li>
        <li>Presumptive, if any is presumptive: a second test decides.</li>
        <li>Pending, while a sample is being tested or one that is needed was not reported.</li>
        <li>Not detected, only if a suitable lymph node was tested on either side.</li>
        <li>Unsuitable, if none of this holds: no result can be given.</li>
      </ol>
    </div>
  )
}
