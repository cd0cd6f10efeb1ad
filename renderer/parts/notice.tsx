import type { ReactNode } from 'react'
import './notice.css'
import { Shape, type ShapeKind } from './shape.tsx'

export type NoticeKind = 'good' | 'warn' | 'info'

const shapes: Record<NoticeKind, ShapeKind> = { good: 'fine', warn: 'soon', info: 'idle' }

/** Something worth knowing that stays on the screen; for what just happened use the strip. */
export function Notice(props: { kind: NoticeKind; children: ReactNode }) {
  return (
    <div className={`notice notice-${props.kind}`} role="status">
      <Shape kind={shapes[props.kind]} />
      <div>{props.children}</div>
    </div>
  )
}
