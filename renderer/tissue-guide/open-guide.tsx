import { lazy, Suspense, useState } from 'react'
import { Button } from '../parts/button.tsx'
import { guideWords } from './words.ts'

const TissueGuide = lazy(async () => ({
  default: (await import('./tissue-guide.tsx')).TissueGuide,
}))

/** The key to the tissue guide, at the head of the bench. */
export function OpenTissueGuide() {
  const [isOpen, setOpen] = useState(false)
  return (
    <>
      <Button keyHint="Alt+A" onPress={() => setOpen(true)}>
        {guideWords.open}
      </Button>
      <Suspense fallback={null}>
        {isOpen && <TissueGuide onClose={() => setOpen(false)} />}
      </Suspense>
    </>
  )
}
