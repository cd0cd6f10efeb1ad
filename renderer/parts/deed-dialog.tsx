import type { ReactNode } from 'react'
import type { Refusal } from '../../shared-types/result.ts'
import { Button } from './button.tsx'
import { Dialog } from './dialog.tsx'
import { RefusalNote } from './refusal-note.tsx'
import { saidElsewhere } from './said-at.ts'

/** A dialog that asks a few things and does one deed with Enter. */
export function DeedDialog(props: {
  title: string
  /** The words on its button: the deed. */
  deed: string
  kind?: 'main' | 'danger'
  isBusy: boolean
  refusal: Refusal | undefined
  /** The fields that show a refusal of their own. */
  fields: readonly string[]
  onDo: () => Promise<void>
  onClose: () => void
  children: ReactNode
}) {
  return (
    <Dialog title={props.title} onClose={props.onClose}>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault()
          if (!props.isBusy) void props.onDo()
        }}
      >
        {props.children}
        <RefusalNote refusal={saidElsewhere(props.refusal, props.fields)} />
        <div className="row">
          <Button
            kind={props.kind ?? 'main'}
            type="submit"
            keyHint="Enter"
            isDisabled={props.isBusy}
          >
            {props.deed}
          </Button>
        </div>
      </form>
    </Dialog>
  )
}
