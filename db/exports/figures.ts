import type { Period } from '../../core/calendar/period.ts'
import { minorText } from '../../core/money/minor.ts'
import type { ComebackRow } from '../../core/reports/comebacks.ts'
import type { HoursRow } from '../../core/reports/hours.ts'
import { turnRoundParts } from '../../core/reports/turn-round.ts'
import type { Read } from '../file/ledger.ts'
import { figuresView } from '../read/reports.ts'
import { readSettings } from '../rows/settings.ts'
import type { Cell, Table } from './table.ts'

type Row = Readonly<Record<string, Cell>>
type Figures = ReturnType<typeof figuresView>

interface Shape {
  readonly columns: readonly string[]
  readonly amounts: readonly string[]
  readonly rows: (
    figures: Figures,
    money: (amount: Parameters<typeof minorText>[0] | null) => Cell,
  ) => readonly Row[]
}

/** Rows counted two ways, each saying by what. */
const by = <R>(ways: Readonly<Record<string, readonly R[]>>) =>
  Object.entries(ways).flatMap(([way, rows]) => rows.map(row => ({ ...row, by: way })))
/** Days to a hundredth, as decimal text. */
const days = (value: number): string => value.toFixed(2)

const hours: Shape = {
  columns: ['by', 'name', 'repairs', 'estimated_minutes', 'worked_minutes', 'over_minutes'],
  amounts: [],
  rows: ({ hours: { byWork, byForm } }) =>
    by<HoursRow<string>>({ work: byWork, form: byForm }).map(row => ({
      by: row.by,
      name: row.key,
      repairs: row.repairs,
      estimated_minutes: row.estimatedMinutes,
      worked_minutes: row.workedMinutes,
      over_minutes: row.overMinutes,
    })),
}

const turnRound: Shape = {
  columns: ['work', 'repairs', ...turnRoundParts.map(part => `${part.replace('-', '_')}_days`), 'all_days'],
  amounts: [],
  rows: figures =>
    figures.turnRound.map(row => ({
      work: row.key,
      repairs: row.repairs,
      ...Object.fromEntries(
        turnRoundParts.map(part => [`${part.replace('-', '_')}_days`, days(row.days[part])]),
      ),
      all_days: days(row.allDays),
    })),
}

const comebacks: Shape = {
  columns: ['by', 'name', 'handed_over', 'came_back'],
  amounts: [],
  rows: ({ comebacks: { byMonth, byWork } }) =>
    by<ComebackRow<string>>({ month: byMonth, work: byWork }).map(row => ({
      by: row.by,
      name: row.key,
      handed_over: row.handedOver,
      came_back: row.cameBack,
    })),
}

const earned: Shape = {
  columns: ['person', 'minutes', 'earned', 'per_hour'],
  amounts: ['earned', 'per_hour'],
  rows: (figures, money) =>
    figures.earned.rows.map(row => ({
      person: row.person,
      minutes: row.minutes,
      earned: money(row.earnedMinor),
      per_hour: money(row.perHourMinor),
    })),
}

const stock: Shape = {
  columns: ['kind', 'parts', 'pieces', 'value'],
  amounts: ['value'],
  rows: (figures, money) =>
    figures.stock.map(row => ({
      kind: row.key,
      parts: row.parts,
      pieces: row.pieces,
      value: money(row.valueMinor),
    })),
}

const shapes = { hours, 'turn-round': turnRound, comebacks, earned, stock }

export type FigureName = keyof typeof shapes
/** The figures that can be taken out, each as a table of its own. */
export const figureNames = Object.keys(shapes) as FigureName[]

/** One of the figures of a period as a table; `at` is now. */
export const figureTable = (name: FigureName, { from, to }: Period, at: string): Table => ({
  ...shapes[name],
  rows(read: Read) {
    const { currency } = readSettings(read).place
    return shapes[name].rows(figuresView(read, from, to, at), amount =>
      amount === null ? null : minorText(amount, currency),
    )
  },
})
