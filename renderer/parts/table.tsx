import type { ReactNode } from 'react'
import './table.css'

export interface Column<R> {
  head: string
  cell: (row: R) => ReactNode
  /** Numbers stand at the right, digit under digit. */
  isNumber?: boolean
}

/** Rows and columns; the first column heads its row. `caption` is read out, and names the table. */
export function Table<R>(props: {
  caption: string
  columns: readonly Column<R>[]
  rows: readonly R[]
  rowKey: (row: R) => string
}) {
  const { columns, rows, rowKey } = props
  return (
    <div className="table-room">
      <table className="table">
        <caption className="unseen">{props.caption}</caption>
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column.head} scope="col" className={classOf(column)}>
                {column.head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <Row key={rowKey(row)} columns={columns} row={row} />
          ))}
        </tbody>
      </table>
    </div>
  )
}

function Row<R>(props: { columns: readonly Column<R>[]; row: R }) {
  return (
    <tr>
      {props.columns.map((column, place) => {
        const Cell = place === 0 ? 'th' : 'td'
        return (
          <Cell
            key={column.head}
            scope={place === 0 ? 'row' : undefined}
            className={classOf(column)}
          >
            {column.cell(props.row)}
          </Cell>
        )
      })}
    </tr>
  )
}

function classOf<R>(column: Column<R>): string | undefined {
  return column.isNumber ? 'table-number numbers' : undefined
}
