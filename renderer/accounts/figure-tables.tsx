import type { InferResponseType } from 'hono/client'
import { type TurnRoundPart, turnRoundParts } from '../../core/reports/turn-round.ts'
import type { api } from '../api.ts'
import { Money } from '../parts/figures.tsx'
import { type Column, Ledger } from '../parts/ledger.tsx'
import { timeWords } from '../parts/time-words.ts'
import { useShop } from '../shop.tsx'

/** The figures as the ledger tells them. */
export type Figures = InferResponseType<typeof api.pages.figures.$get>

interface ViewProps {
  readonly view: Figures
}

interface Table<Row> {
  readonly caption: string
  readonly rows: readonly Row[]
  readonly columns: readonly Column<Row>[]
  readonly totalLabel?: string
}

/** One table of figures; each line has a key. */
function Figured<Row extends { readonly key: string }>({ rows, ...table }: Table<Row>) {
  const { figures } = useShop().words
  return (
    <Ledger plain {...table} groups={[{ title: '', rows }]} rowKey={row => row.key} empty={figures.empty} />
  )
}

type HoursRow = Omit<Figures['hours']['byForm'][number], 'key'> & { readonly key: string }

function useHoursColumns(name: string, nameOf: (key: string) => string): Column<HoursRow>[] {
  const { words, formats } = useShop()
  const { figures } = words
  const { hours } = figures
  const signed = (minutes: number) => `${minutes < 0 ? '−' : '+'}${timeWords(words, Math.abs(minutes))}`
  return [
    { label: name, kind: 'entry', cell: row => nameOf(row.key) },
    { label: figures.clocks, kind: 'figure', cell: row => row.repairs },
    { label: hours.estimated, kind: 'figure', cell: row => timeWords(words, row.estimatedMinutes) },
    { label: hours.worked, kind: 'figure', cell: row => timeWords(words, row.workedMinutes) },
    { label: hours.over, kind: 'figure', cell: row => signed(row.overMinutes) },
    {
      label: hours.percent,
      kind: 'figure',
      cell: row =>
        row.workedPercent === null ? words.screens.none : formats.percent(`${row.workedPercent}`),
    },
  ]
}

/** Estimated against worked hours, by work and by form of clock. */
export function HoursTables({ view: { hours } }: ViewProps) {
  const { words } = useShop()
  const { figures } = words
  const said = figures.hours
  const scopes: Readonly<Record<string, string>> = words.scopes
  const forms: Readonly<Record<string, string>> = words.forms
  const byWork = useHoursColumns(figures.work, key => scopes[key] ?? key)
  const byForm = useHoursColumns(figures.form, key => forms[key] ?? key)
  return (
    <>
      <Figured caption={`${said.title}, ${said.byWork}`} rows={hours.byWork} columns={byWork} />
      {hours.byForm.length > 0 && (
        <Figured caption={`${said.title}, ${said.byForm}`} rows={hours.byForm} columns={byForm} />
      )}
    </>
  )
}

/** Where the days go, by work. */
export function TurnRoundTable({ view }: ViewProps) {
  const { words, formats } = useShop()
  const { figures } = words
  const said = figures.turnRound
  type Row = Figures['turnRound'][number]
  const tenths = (days: number) => formats.number(Math.round(days * 10) / 10)
  const columns: Column<Row>[] = [
    { label: figures.work, kind: 'entry', cell: row => words.scopes[row.key] },
    { label: figures.clocks, kind: 'figure', cell: row => row.repairs },
    ...turnRoundParts.map((part: TurnRoundPart) => ({
      label: said.parts[part],
      kind: 'figure' as const,
      cell: (row: Row) => tenths(row.days[part]),
    })),
    { label: said.all, kind: 'figure', cell: row => tenths(row.allDays) },
  ]
  return <Figured caption={said.title} rows={view.turnRound} columns={columns} />
}

type ComebackRow = Omit<Figures['comebacks']['byMonth'][number], 'key'> & { readonly key: string }

function useComebackColumns(name: string, nameOf: (key: string) => string): Column<ComebackRow>[] {
  const { words, formats } = useShop()
  const { comebacks } = words.figures
  return [
    { label: name, kind: 'entry', cell: row => nameOf(row.key) },
    { label: comebacks.handedOver, kind: 'figure', cell: row => row.handedOver },
    { label: comebacks.cameBack, kind: 'figure', cell: row => row.cameBack },
    { label: comebacks.percent, kind: 'figure', cell: row => formats.percent(`${row.percent}`) },
  ]
}

/** Comebacks by month of hand-over and by work. */
export function ComebackTables({ view: { comebacks } }: ViewProps) {
  const { words, formats } = useShop()
  const { figures } = words
  const said = figures.comebacks
  const scopes: Readonly<Record<string, string>> = words.scopes
  const byMonth = useComebackColumns(said.month, key => formats.month(key))
  const byWork = useComebackColumns(figures.work, key => scopes[key] ?? key)
  return (
    <>
      <Figured caption={`${said.title}, ${said.byMonth}`} rows={comebacks.byMonth} columns={byMonth} />
      {comebacks.byWork.length > 0 && (
        <Figured caption={`${said.title}, ${said.byWork}`} rows={comebacks.byWork} columns={byWork} />
      )}
    </>
  )
}

/** What each person's hours earned, and all together. */
export function EarnedTable({ view: { earned } }: ViewProps) {
  const { words, formats } = useShop()
  const { figures, bench, screens } = words
  const said = figures.earned
  const perHour = (amount: (typeof earned.rows)[number]['perHourMinor']) =>
    amount === null ? screens.none : <Money minor={amount} />
  const rows = earned.rows.map(row => ({ ...row, key: `${row.personId}` }))
  const columns: Column<(typeof rows)[number]>[] = [
    { label: said.person, kind: 'entry', cell: row => row.person ?? bench.running.nobody },
    {
      label: said.hours,
      kind: 'figure',
      cell: row => timeWords(words, row.minutes),
      total: timeWords(words, earned.total.minutes),
    },
    {
      label: said.earned,
      kind: 'figure',
      cell: row => <Money minor={row.earnedMinor} />,
      total: <Money minor={earned.total.earnedMinor} />,
    },
    {
      label: said.perHour,
      kind: 'figure',
      cell: row => perHour(row.perHourMinor),
      total: perHour(earned.total.perHourMinor),
    },
  ]
  return (
    <>
      <Figured caption={said.title} rows={rows} columns={columns} totalLabel={figures.all} />
      {earned.unworkedMinor !== 0 && <p>{said.unworked(formats.money(earned.unworkedMinor))}</p>}
    </>
  )
}

/** The stock at cost by kind of part. */
export function StockTable({ view }: ViewProps) {
  const { words } = useShop()
  const { figures } = words
  const said = figures.stock
  const columns: Column<Figures['stock'][number]>[] = [
    { label: said.kind, kind: 'entry', cell: row => words.partKinds[row.key] },
    { label: said.parts, kind: 'figure', cell: row => row.parts },
    { label: said.pieces, kind: 'figure', cell: row => row.pieces },
    {
      label: said.value,
      kind: 'figure',
      cell: row => <Money minor={row.valueMinor} />,
      total: <Money minor={view.stockMinor} />,
    },
  ]
  return <Figured caption={said.title} rows={view.stock} columns={columns} totalLabel={figures.all} />
}
