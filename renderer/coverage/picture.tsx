import { createContext, type ReactNode, useContext, useId, useRef } from 'react'
import { Button } from '../parts/button.tsx'
import { type Column, Table } from '../parts/table.tsx'
import { sayDone } from '../scanner/strip.ts'
import { savePng, saveSvg } from './save-picture.ts'

/** Of which record the pictures are, and of when: it stands in every file. */
export const RecordOf = createContext('')

/** A sentence in lines that fit a picture 960 units wide. */
function inLines(words: string, most = 125): string[] {
  return words.split(' ').reduce<string[]>((lines, word) => {
    const last = lines.at(-1)
    return last !== undefined && last.length + word.length < most
      ? [...lines.slice(0, -1), `${last} ${word}`]
      : [...lines, word]
  }, [])
}

/** A picture with its words, the same numbers as a table, and itself as a file. */
export function Picture<R>(props: {
  title: string
  /** What the picture says in a sentence: its text alternative. */
  say: string
  /** Name of its files, without an ending. */
  file: string
  size: { readonly width: number; readonly height: number }
  children: ReactNode
  table: {
    readonly columns: readonly Column<R>[]
    readonly rows: readonly R[]
    readonly rowKey: (row: R) => string
  }
}) {
  const { title, say, file, size, table } = props
  const drawing = useRef<SVGSVGElement>(null)
  const id = useId()
  const caption = [title, ...inLines(say), useContext(RecordOf)]
  async function png() {
    if (drawing.current === null) return
    const isSaved = await savePng(drawing.current, caption, file)
    sayDone(
      isSaved ? `${file}.png is saved.` : 'This browser cannot make a PNG of it: save the SVG.',
    )
  }
  function svg() {
    if (drawing.current === null) return
    saveSvg(drawing.current, caption, file)
    sayDone(`${file}.svg is saved.`)
  }
  return (
    <figure className="coverage-picture" aria-labelledby={id}>
      <figcaption id={id}>
        <h2>{title}</h2>
        <p>{say}</p>
      </figcaption>
      <svg
        ref={drawing}
        viewBox={`0 0 ${size.width} ${size.height}`}
        role="img"
        aria-label={`${title}: ${say}`}
      >
        {props.children}
      </svg>
      <div className="row">
        <Button label={`Save as SVG: ${title}`} onPress={svg}>
          Save as SVG
        </Button>
        <Button label={`Save as PNG: ${title}`} onPress={() => void png()}>
          Save as PNG
        </Button>
        <details>
          <summary>As a table</summary>
          <Table caption={title} {...table} />
        </details>
      </div>
    </figure>
  )
}
