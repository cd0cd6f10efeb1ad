import { useState } from 'react'
import { useTell } from '../desk/use-desk.ts'
import { base64Of, type TakenFile } from '../parts/file-entry.tsx'

/** A call takes no more than a megabyte, so a file is brought in pieces. */
const pieceBytes = 600_000

export interface BroughtMark {
  readonly brought: string
  readonly name: string
}

/** Hands a file to the desk, piece by piece; `mark` stands for it afterwards. */
export function useBring() {
  const { tell, refusal } = useTell('results.bring')
  const [mark, setMark] = useState<BroughtMark>()
  const [busy, setBusy] = useState(false)
  async function bring(file: TakenFile) {
    setMark(undefined)
    setBusy(true)
    const brought = await pieces(file)
    setBusy(false)
    if (brought !== null) setMark({ brought, name: file.name })
  }
  async function pieces({ name, bytes }: TakenFile): Promise<string | null> {
    let brought: string | null = null
    for (let from = 0; from === 0 || from < bytes.length; from += pieceBytes) {
      const piece = bytes.subarray(from, from + pieceBytes)
      const answer = await tell({ brought, name, base64: base64Of({ name, bytes: piece }) })
      if (!answer.ok) return null
      brought = answer.value.brought
    }
    return brought
  }
  return { bring, mark, busy, refusal }
}
