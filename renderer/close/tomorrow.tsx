import { keepingWords } from '../../shared-types/station.ts'
import type { CarryOver, KitsTomorrow } from '../../shared-types/views/close.ts'
import { nothing, useAsk } from '../desk/use-desk.ts'
import { Panel } from '../parts/panel.tsx'

/** What is here tonight and there tomorrow, and the kits that another such day needs. */
export function Tomorrow() {
  const { data } = useAsk('handover', nothing)
  if (!data) return null
  return (
    <Panel title="For tomorrow">
      <CarriedOver carry={data.carry} />
      <p>{sayKits(data.tomorrow)}</p>
    </Panel>
  )
}

export function CarriedOver({ carry }: { carry: CarryOver }) {
  const facts: [string, number][] = [
    ['Kits in stock', carry.kitsInStock],
    ['Kits in hands', carry.kitsInHands],
    ['Blank labels', carry.blankLabels],
    ['Bags in the freezer', carry.bagsFrozen],
  ]
  return (
    <>
      <dl className="close-totals">
        {facts.map(([words, count]) => (
          <div key={words}>
            <dt>{words}</dt>
            <dd className="numbers">{count}</dd>
          </div>
        ))}
      </dl>
      {carry.coolers.length > 0 && (
        <p>
          Still here:{' '}
          {carry.coolers
            .map(({ name, keeping, bags }) => `${name} (${keepingWords[keeping]}), ${bags} bags`)
            .join('; ')}
          .
        </p>
      )}
    </>
  )
}

function sayKits({ animals, needKit, enough, here, ask }: KitsTomorrow): string {
  const forecast = `Another day like this brings about ${animals} animals, ${needKit} of 100 with a kit: ${enough} kits are enough on 95 of 100 such days.`
  return `${forecast} ${here} are here${ask === 0 ? ', so nothing need be asked for.' : `: ask for ${ask}.`}`
}
