import type { ResultLookView } from '../../shared-types/views/results.ts'

/** The first lines of the file with their numbers, as they are cut now; the headings stand out. */
export function FirstLines(props: { look: ResultLookView }) {
  const { rows, lines, linesAbove } = props.look
  return (
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- scrolls without holding anything to press
    <div className="results-lines" role="group" aria-label="First lines of the file" tabIndex={0}>
      <table className="table">
        <caption>First lines, of {lines}</caption>
        <tbody>
          {rows.map((row, place) => (
            <tr key={place} className={place === linesAbove ? 'results-heading' : undefined}>
              <th scope="row" className="numbers">
                {place + 1}
                {place === linesAbove && <span className="unseen"> (headings)</span>}
              </th>
              {row.map((cell, column) => (
                <td key={column}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
