import type { ReactNode } from 'react'
import { Dialog as AriaDialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import { Button } from './button.tsx'
import './dialog.css'

/** A question over the screen; Esc or its own button closes it, and the focus goes back to where it was. */
export function Dialog(props: {
  title: string
  onClose: () => void
  children: ReactNode
  /** Stands at the right edge, for reading beside the screen's list. */
  isSide?: boolean
  /** Takes the whole width, for pictures beside each other. */
  isWide?: boolean
}) {
  return (
    <ModalOverlay
      isOpen
      onOpenChange={(isOpen) => !isOpen && props.onClose()}
      className="dialog-ground"
    >
      <Modal className={classOf(props)}>
        {/* The dialog itself may have the focus, so its keys are bound around it. */}
        <div data-dialog data-keys>
          <AriaDialog className="dialog-inside">
            <header className="dialog-head">
              <Heading slot="title" level={2}>
                {props.title}
              </Heading>
              <Button keyHint="Esc" onPress={props.onClose}>
                Close
              </Button>
            </header>
            <div className="dialog-body">{props.children}</div>
          </AriaDialog>
        </div>
      </Modal>
    </ModalOverlay>
  )
}

function classOf(props: { isSide?: boolean; isWide?: boolean }): string {
  if (props.isSide) return 'dialog dialog-side'
  return props.isWide ? 'dialog dialog-wide' : 'dialog'
}
