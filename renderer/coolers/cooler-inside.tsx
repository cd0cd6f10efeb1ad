import { useState } from 'react'
import type { CoolerNumber } from '../../shared-types/sample-number.ts'
import type { BagView } from '../../shared-types/views/coolers.ts'
import { useAsk } from '../desk/use-desk.ts'
import { BagsInside } from './bags-inside.tsx'
import { ColdPanel } from './cold-panel.tsx'
import { Readings } from './readings.tsx'
import { TakeOutDialog } from './take-out-dialog.tsx'

/** What lies in the cooler and how warm it was. */
export function CoolerInside(props: { number: CoolerNumber }) {
  const { data } = useAsk('cooler', { cooler: props.number })
  const [bag, setBag] = useState<BagView>()
  if (data === undefined) return null
  const { cooler, bags, readings } = data
  return (
    <>
      <BagsInside bags={bags} isOpen={cooler.state === 'open'} onTakeOut={setBag} />
      <ColdPanel cooler={cooler.cooler} />
      <Readings readings={readings} limits={cooler.limits} />
      {bag && <TakeOutDialog cooler={cooler} bag={bag} onClose={() => setBag(undefined)} />}
    </>
  )
}
