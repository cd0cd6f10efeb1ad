import { nothing, useAsk } from '../desk/use-desk.ts'
import { Shape } from '../parts/shape.tsx'
import './banners.css'

/** Stands over a log of a newer version of the program, which this one only shows. */
export function ReadOnlyBanner() {
  const isReadOnly = useAsk('shelf.look', nothing).data?.readOnly ?? false
  if (!isReadOnly) return null
  return (
    <p className="backup-banner" role="status">
      <Shape kind="soon" /> <strong>Read only.</strong> A newer version of Duskline wrote this log:
      look at it and print from it here, or update Duskline to go on working in it.
    </p>
  )
}
