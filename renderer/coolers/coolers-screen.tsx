import { useMemo, useRef, useState } from 'react'
import type { CoolerNumber } from '../../shared-types/sample-number.ts'
import type { CoolerView } from '../../shared-types/views/coolers.ts'
import { nothing, useAsk } from '../desk/use-desk.ts'
import { CustodyDialog } from '../custody/custody-dialog.tsx'
import { Button } from '../parts/button.tsx'
import { NumberEntry } from '../parts/number-entry.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { BenchBags } from './bench-bags.tsx'
import { CoolerCautions } from './cautions.tsx'
import { CoolerHead } from './cooler-head.tsx'
import { CoolerInside } from './cooler-inside.tsx'
import { CoolerList } from './cooler-list.tsx'
import './coolers-screen.css'
import { Echoes } from './echoes.tsx'
import { HoldLine } from './hold-line.tsx'
import { OpenDialog } from './open-dialog.tsx'
import { type Filling, chooseCooler, useFilling, useNamedCooler } from './use-filling.ts'

/** Bags go into coolers, scan after scan; coolers are read, sealed and looked into. */
export function CoolersScreen() {
  const { data, refusal } = useAsk('coolers', nothing)
  const filling = usePicked(data?.coolers)
  const { echoes, take } = useFilling(filling)
  const [isOpening, setOpening] = useState(false)
  const [isTracing, setTracing] = useState(false)
  const scanning = useRef<HTMLDivElement>(null)
  const toScan = () => scanning.current?.querySelector('input')?.focus()
  return (
    <div className="coolers">
      <div className="coolers-side">
        <CoolerList
          coolers={data?.coolers ?? []}
          picked={filling?.cooler}
          onPick={chooseCooler}
          onSettle={toScan}
          onOpen={() => setOpening(true)}
        />
        <CoolerCautions />
      </div>
      <div className="coolers-main">
        {filling ? (
          <CoolerHead key={`head ${filling.cooler}`} number={filling.cooler} />
        ) : (
          <h1>Choose a cooler to fill</h1>
        )}
        <div className="coolers-scan" ref={scanning}>
          <NumberEntry
            label="Bag or cooler"
            hint="Scan bag after bag, or type a number. A cooler's label changes the cooler."
            onNumber={take}
            autoFocus
          />
          <Echoes echoes={echoes} />
          <RefusalNote refusal={refusal} />
        </div>
        {filling && <CoolerInside key={`inside ${filling.cooler}`} number={filling.cooler} />}
      </div>
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- scrolls without holding anything to press */}
      <div className="coolers-side" role="group" aria-label="Bench" tabIndex={0}>
        <HoldLine />
        <BenchBags bags={data?.bench ?? []} />
        <Button keyHint="Alt+U" onPress={() => setTracing(true)}>
          Custody of a bag
        </Button>
      </div>
      {isTracing && <CustodyDialog onClose={() => setTracing(false)} />}
      {isOpening && (
        <OpenDialog
          onClose={() => {
            setOpening(false)
            toScan()
          }}
        />
      )}
    </div>
  )
}

/**
 * The cooler that the address names, else the one that was the only one open when this screen came up.
 * Between several nobody guesses: a bag in the wrong cooler costs more than a scan of the label.
 */
function usePicked(coolers: readonly CoolerView[] | undefined): Filling | undefined {
  const named = useNamedCooler()
  const [first, setFirst] = useState<CoolerNumber | 'none'>()
  if (first === undefined && coolers !== undefined) setFirst(onlyOpen(coolers) ?? 'none')
  return useMemo(() => {
    const find = (number?: string) => coolers?.find(({ cooler }) => cooler === number)
    const found = find(named) ?? find(first)
    return found && { cooler: found.cooler, name: found.name }
  }, [coolers, named, first])
}

function onlyOpen(coolers: readonly CoolerView[]): CoolerNumber | undefined {
  const open = coolers.filter(({ state }) => state === 'open')
  return open.length === 1 ? open[0]?.cooler : undefined
}
