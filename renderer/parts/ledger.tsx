import {
  type KeyboardEvent,
  type MouseEvent,
  type ReactNode,
  useDeferredValue,
  useRef,
  useState,
} from 'react'
import { Link, useLocation } from 'wouter'

/** What a column holds decides how it is set. */
export type ColumnKind = 'date' | 'number' | 'entry' | 'standing' | 'figure' | 'text'

const setAs: Record<ColumnKind, string> = {
  date: 'd',
  number: 'n',
  entry: 'entry e',
  standing: 'st',
  figure: 'num',
  text: 't',
}

export interface Column<Row> {
  /** The heading; it is the column's key as well. */
  readonly label: string
  readonly kind: ColumnKind
  readonly cell: (row: Row) => ReactNode
  /** What stands here in the total's line. */
  readonly total?: ReactNode
}

export interface Group<Row> {
  /** Empty for lines without a heading. */
  readonly title: string
  readonly rows: readonly Row[]
}

export interface LedgerProps<Row> {
  /** What the list is, for people who do not see it. */
  readonly caption: string
  readonly columns: readonly Column<Row>[]
  readonly groups: readonly Group<Row>[]
  readonly rowKey: (row: Row) => string | number
  /** What stands in place of lines when there are none. */
  readonly empty: string
  /** Where Enter and a double click lead; the number (else the first column) becomes the link. */
  readonly open?: (row: Row) => string
  /** The line chosen, by its key, and who wants to know of another choice. */
  readonly selected?: string | number | null
  readonly onSelect?: (row: Row) => void
  /** What the double-ruled line at the end says; its figures stand in the columns' `total`. */
  readonly totalLabel?: string
  /** No blank lines below it: for a ledger inside a section. */
  readonly plain?: boolean
}

const steps: Record<string, (at: number, last: number) => number> = {
  ArrowDown: (at, last) => Math.min(at + 1, last),
  ArrowUp: at => Math.max(at - 1, 0),
  PageDown: (at, last) => Math.min(at + 10, last),
  PageUp: at => Math.max(at - 10, 0),
  Home: () => 0,
  End: (_, last) => last,
}

/** Moves the focus between the lines' links: one of them is in the tab order, the keys reach the rest (APG grid). */
function moveByKey(event: KeyboardEvent<HTMLTableElement>): void {
  const step = steps[event.key]
  const links = [...event.currentTarget.querySelectorAll<HTMLAnchorElement>('a.open')]
  const at = links.indexOf(event.target as HTMLAnchorElement)
  if (!step || at < 0 || event.altKey || event.ctrlKey || event.metaKey) return
  event.preventDefault()
  links[step(at, links.length - 1)]?.focus()
}

function useChosen<Row>({ groups, rowKey, selected, onSelect }: LedgerProps<Row>) {
  const [own, setOwn] = useState<string | number | null>(null)
  const chosen = selected === undefined ? own : selected
  const rows = groups.flatMap(group => group.rows)
  const stop = rows.find(row => rowKey(row) === chosen) ?? rows[0]
  return {
    chosen,
    /** The one line in the tab order. */
    stop: stop && rowKey(stop),
    choose: (row: Row) => {
      setOwn(rowKey(row))
      if (rowKey(row) !== chosen) onSelect?.(row)
    },
  }
}

/** So many lines stand at once: more than a window shows. */
const firstLines = 30

function beginningOf<Row>(groups: readonly Group<Row>[]): readonly Group<Row>[] {
  let room = firstLines
  return groups.map(group => {
    const rows = group.rows.slice(0, room)
    room -= rows.length
    return { ...group, rows }
  })
}

/** A ruled ledger. With `open` its lines are chosen by click and arrow keys and opened by Enter or a double click. */
export function Ledger<Row>(props: LedgerProps<Row>) {
  const { columns, groups, caption, empty, open, plain, totalLabel } = props
  const state = useChosen(props)
  // The beginning is painted first; the rest of a long ledger follows without keeping the page waiting.
  const whole = useDeferredValue(true, false)
  const filled = (whole ? groups : beginningOf(groups)).filter(group => group.rows.length > 0)
  if (plain && filled.length === 0) return <p className="quiet">{empty}</p>
  return (
    <div className={plain ? 'ledger plain' : 'ledger'}>
      <table role={open ? 'grid' : undefined} aria-label={caption} onKeyDown={open ? moveByKey : undefined}>
        <thead>
          <tr>
            {columns.map(({ label, kind }) => (
              <th key={label} scope="col" className={setAs[kind]}>
                {label}
              </th>
            ))}
          </tr>
        </thead>
        {filled.map(group => (
          <tbody key={group.title}>
            {group.title && <GroupLine title={group.title} columns={columns} />}
            {group.rows.map(row => (
              <Line key={props.rowKey(row)} row={row} ledger={props} state={state} />
            ))}
          </tbody>
        ))}
        {filled.length === 0 && <Nothing columns={columns} words={empty} />}
        {totalLabel && filled.length > 0 && <Total label={totalLabel} columns={columns} />}
      </table>
      {!plain && <div className="blank" aria-hidden="true" />}
    </div>
  )
}

const leadingColumns = <Row,>(columns: readonly Column<Row>[]) =>
  columns.findIndex(({ kind }) => kind !== 'date' && kind !== 'number')

/** The empty cells of date and number before a heading or a total. */
function Lead<Row>({ columns }: { columns: readonly Column<Row>[] }) {
  return columns
    .slice(0, leadingColumns(columns))
    .map(({ label, kind }) => <td key={label} className={setAs[kind]} />)
}

function GroupLine<Row>({ title, columns }: { title: string; columns: readonly Column<Row>[] }) {
  return (
    <tr className="group">
      <Lead columns={columns} />
      <th scope="rowgroup" colSpan={columns.length - leadingColumns(columns)}>
        {title}
      </th>
    </tr>
  )
}

function Nothing<Row>({ columns, words }: { columns: readonly Column<Row>[]; words: string }) {
  return (
    <tbody>
      <tr className="nothing">
        <Lead columns={columns} />
        <td colSpan={columns.length - leadingColumns(columns)}>{words}</td>
      </tr>
    </tbody>
  )
}

function Total<Row>({ label, columns }: { label: string; columns: readonly Column<Row>[] }) {
  const lead = leadingColumns(columns)
  return (
    <tfoot>
      <tr className="total">
        <Lead columns={columns} />
        <th scope="row" className={setAs[columns[lead]?.kind ?? 'entry']}>
          {label}
        </th>
        {columns.slice(lead + 1).map(({ label: name, kind, total }) => (
          <td key={name} className={setAs[kind]} data-label={name}>
            {total}
          </td>
        ))}
      </tr>
    </tfoot>
  )
}

interface LineProps<Row> {
  readonly row: Row
  readonly ledger: LedgerProps<Row>
  readonly state: ReturnType<typeof useChosen<Row>>
}

function Line<Row>({ row, ledger: { columns, open, rowKey }, state }: LineProps<Row>) {
  const [, navigate] = useLocation()
  const line = useRef<HTMLTableRowElement>(null)
  const linked = Math.max(
    columns.findIndex(({ kind }) => kind === 'number'),
    0,
  )
  const key = rowKey(row)
  const cell = ({ kind, label, cell }: Column<Row>, index: number) => (
    <td key={label} className={setAs[kind]} data-label={label}>
      {open && index === linked ? (
        <Link
          className="open"
          href={open(row)}
          tabIndex={key === state.stop ? 0 : -1}
          onFocus={() => state.choose(row)}
        >
          {cell(row)}
        </Link>
      ) : (
        cell(row)
      )}
    </td>
  )
  if (!open) return <tr>{columns.map(cell)}</tr>
  const choose = (event: MouseEvent) => {
    if (!(event.target as Element).closest('a, button, input, select'))
      line.current?.querySelector<HTMLAnchorElement>('a.open')?.focus()
  }
  return (
    // The keyboard's way is the link inside; a click anywhere on the line is only the mouse's shortcut to it.
    <tr
      ref={line}
      className="row"
      aria-selected={key === state.chosen}
      onClick={choose}
      onDoubleClick={() => navigate(open(row))}
    >
      {columns.map(cell)}
    </tr>
  )
}

/** The entry of a line: what leads, what follows on the same line, and a second line in smaller type. */
export function Entry({ lead, rest, second }: { lead: ReactNode; rest?: ReactNode; second?: ReactNode }) {
  return (
    <>
      <b>{lead}</b>
      {rest && <> · {rest}</>}
      {second && <small>{second}</small>}
    </>
  )
}
