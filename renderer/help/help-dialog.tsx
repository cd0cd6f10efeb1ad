import { useEffect, useRef } from 'react'
import { fill } from '../../shared-types/fill.ts'
import { GuideFor } from '../../shared-types/help/guides.ts'
import { type HelpPageName, helpPages } from '../../shared-types/help/pages.ts'
import { refusalHelp } from '../../shared-types/help/refusals.ts'
import { callDesk } from '../desk/answer.ts'
import { useConnection } from '../desk/desk-provider.tsx'
import { useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { KeyCap } from '../parts/key-cap.tsx'
import { openPdf } from '../parts/pdf.ts'
import { isSingle } from '../scanner/keys.ts'
import { sayRefused } from '../scanner/strip.ts'
import { type OpenHelp, openHelp } from './help.ts'
import type { KeyLine } from './key-lines.ts'
import { alwaysKeys, guideWords, helpWords as words } from './words.ts'

/** Help beside the screen: why the desk refused, the keys that answer here, pages, guides to print. */
export function HelpDialog(props: { help: OpenHelp; onClose: () => void }) {
  const { topic, keys } = props.help
  return (
    <Dialog title={words.title} onClose={props.onClose} isSide>
      {topic.is === 'all' ? (
        <AllHelp keys={keys} onClose={props.onClose} />
      ) : (
        <>
          {topic.is === 'refusal' ? <Refused code={topic.code} /> : <Page page={topic.page} />}
          <Button keyHint="Alt+H" onPress={() => openHelp({ is: 'all' })}>
            {words.back}
          </Button>
        </>
      )}
    </Dialog>
  )
}

function Refused({ code }: { code: string }) {
  const help = refusalHelp[code]
  return (
    <>
      <section className="help-why" aria-label={words.refusalHead}>
        <h3>{words.refusalHead}</h3>
        {help && <p>{help.why}</p>}
        <p className="field-hint">{fill(words.refusalCode, { code })}</p>
      </section>
      <Page page={help?.page ?? 'slips'} />
    </>
  )
}

function Page({ page }: { page: HelpPageName }) {
  const { title, about, steps } = helpPages[page]
  const heading = useRef<HTMLHeadingElement>(null)
  useEffect(() => heading.current?.focus(), [page])
  return (
    <article className="help-page">
      <h3 ref={heading} tabIndex={-1}>
        {title}
      </h3>
      <p>{about}</p>
      <ol className="help-steps">
        {steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
    </article>
  )
}

function AllHelp(props: { keys: readonly KeyLine[]; onClose: () => void }) {
  const { tell } = useTell('tour.take')
  return (
    <>
      <KeyMap keys={props.keys} />
      <section aria-label={words.guidesHead}>
        <h3>{words.guidesHead}</h3>
        <Guides />
      </section>
      <section aria-label={words.pagesHead}>
        <h3>{words.pagesHead}</h3>
        <ul className="help-pages">
          {Object.entries(helpPages).map(([page, { title }]) => (
            <li key={page}>
              <button
                type="button"
                className="help-link"
                onClick={() => openHelp({ is: 'page', page: page as HelpPageName })}
              >
                {title}
              </button>
            </li>
          ))}
        </ul>
      </section>
      <Button
        keyHint="Alt+Q"
        onPress={() => {
          void tell({ again: true })
          props.onClose()
        }}
      >
        {words.tourAgain}
      </Button>
    </>
  )
}

function KeyMap({ keys }: { keys: readonly KeyLine[] }) {
  const parts = [...new Set(keys.map(({ where }) => where))]
  return (
    <section aria-label={words.keysHead}>
      <h3>{words.keysHead}</h3>
      <p className="field-hint">{words.keysNote}</p>
      {parts.map((where) => (
        <KeyPart key={where} where={where} lines={keys.filter((each) => each.where === where)} />
      ))}
      <h4>{words.alwaysHead}</h4>
      <KeyRows rows={alwaysKeys} />
    </section>
  )
}

function KeyPart(props: { where: string; lines: readonly KeyLine[] }) {
  const needsFocus = props.lines.some(({ key }) => isSingle(key))
  return (
    <>
      <h4>
        {props.where} {needsFocus && <span className="field-hint">{words.withFocus}</span>}
      </h4>
      <KeyRows rows={props.lines.map(({ key, words: said }) => [key, said] as const)} />
    </>
  )
}

function KeyRows({ rows }: { rows: readonly (readonly [string, string])[] }) {
  return (
    <dl className="help-keys">
      {rows.map(([key, said]) => (
        <div key={`${key} ${said}`}>
          <dt>
            <KeyCap>{key}</KeyCap>
            <span className="unseen">{key}</span>
          </dt>
          <dd>{said}</dd>
        </div>
      ))}
    </dl>
  )
}

function Guides() {
  const connection = useConnection()
  async function print(role: GuideFor) {
    const guide = await callDesk(connection, 'guide', { role })
    if (guide.ok) openPdf(guide.value)
    else sayRefused(guide.refusal)
  }
  return (
    <div className="row">
      {GuideFor.options.map((role, place) => (
        <Button key={role} keyHint={`Alt+${place + 1}`} onPress={() => void print(role)}>
          {guideWords[role]}
        </Button>
      ))}
    </div>
  )
}
