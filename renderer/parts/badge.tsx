import type { ReactNode } from 'react'
import './badge.css'
import { Shape, type ShapeKind } from './shape.tsx'

/** A state in a word with its shape. `tone` colours it otherwise than the shape's own. */
export function Badge(props: { shape: ShapeKind; tone?: ShapeKind; children: ReactNode }) {
  return (
    <span className={`badge badge-${props.tone ?? props.shape}`}>
      <Shape kind={props.shape} /> {props.children}
    </span>
  )
}
