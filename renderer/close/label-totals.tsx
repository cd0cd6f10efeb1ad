import type { LabelAccount } from '../../shared-types/views/close.ts'
import { Panel } from '../parts/panel.tsx'

/** Every label printed here by what became of it, once the unused ones are counted. */
export function LabelTotals({ labels }: { readonly labels: LabelAccount | null }) {
  if (labels === null) return null
  const facts: [string, number][] = [
    ['Printed', labels.printed],
    ['Used', labels.used],
    ['Void', labels.void],
    ['Not used, found', labels.unused],
    ['Unaccounted for', labels.unaccounted],
  ]
  return (
    <Panel title="Labels">
      <dl className="close-totals">
        {facts.map(([words, count]) => (
          <div key={words}>
            <dt>{words}</dt>
            <dd className="numbers">{count}</dd>
          </div>
        ))}
      </dl>
      {labels.unaccounted > 0 && (
        <p>
          Look for them; make those that stay lost void (kits screen), so that nobody uses them.
        </p>
      )}
    </Panel>
  )
}
