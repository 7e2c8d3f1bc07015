import { type ChartMark, type Point, type RateChart, rateChart } from '../../../core/run-in/rate-chart.ts'
import type { ShelfReading } from '../../../core/run-in/shelf-reading.ts'
import type { Block } from '../kit/flow.ts'
import { row } from '../kit/row.ts'
import type { Sheet } from '../kit/sheet.ts'
import { inks, styles } from '../kit/styles.ts'
import { labelCell } from './entry.ts'
import type { Desk } from './speech.ts'

const height = 218
const margins = { left: 46, right: 8, top: 8, bottom: 30 }
/** What was done stands above the chart, in so many lines at most; all of it is in the table of readings. */
const mostLines = 3
const lineHeight = 10
/** So many readings get dots of their own; beyond that the line alone is clearer. */
const mostDots = 120
const shade = '#e6ebe8'
const wind = '#9aa7ac'

/** A mark with its words, where they begin and on which line above the chart they stand. */
interface PlacedMark {
  readonly x: number
  readonly text: string
  readonly from: number
  readonly line: number
}

/** The error of a clock over time: readings and their fitted line by stretch, winds, what was done, and the wedge of the limit. */
export function rateChartBlock(d: Desk, readings: readonly ShelfReading[], limitPerDay: number): Block[] {
  const { sheet, words } = d
  const say = words.papers.runIn
  const room = { width: sheet.width, height, ...margins }
  const marks = placedMarks(d, rateChart(readings, limitPerDay, room).marks)
  const top = margins.top + lineHeight * Math.max(0, ...marks.map(({ line }) => line + 1))
  const chart = rateChart(readings, limitPerDay, { ...room, top })
  const [label] = row(sheet, [labelCell(sheet, say.chart)], { above: 5 })
  return [
    {
      height: height + 4,
      keep: true,
      draw: y => {
        label?.draw(y)
        sheet.say('Figure', () => drawChart(d, { chart, marks, top }, y + 4), {
          alt: say.chartAlt(readings.length),
        })
      },
    },
  ]
}

/** Words of marks on the first line where they do not run into the words before; those that find none are left to the table. */
function placedMarks(d: Desk, marks: readonly ChartMark[]): PlacedMark[] {
  const ends: number[] = []
  return marks.flatMap(mark => {
    const text = markText(d, mark)
    const width = d.sheet.set.width(text, styles.foot)
    const from = Math.min(mark.x, d.sheet.width - width)
    const line = Array.from({ length: mostLines }, (_, i) => i).find(i => from >= (ends[i] ?? 0))
    if (line === undefined) return [{ x: mark.x, text: '', from, line: 0 }]
    ends[line] = from + width + 8
    return [{ x: mark.x, text, from, line }]
  })
}

interface Drawing {
  readonly chart: RateChart
  readonly marks: readonly PlacedMark[]
  /** Upper edge of the plot. */
  readonly top: number
}

/** The chart with its upper edge at `y`; the document's state is put back after it. */
function drawChart(d: Desk, drawing: Drawing, y: number): void {
  const { chart, top } = drawing
  const { document } = d.sheet
  document.save().translate(d.sheet.body, y)
  const width = d.sheet.width - margins.left - margins.right
  document
    .save()
    .rect(margins.left, top, width, height - top - margins.bottom)
    .clip()
  for (const { band } of chart.segments) if (band.length > 0) shape(document, band).closePath().fill(shade)
  document.restore()
  drawSeconds(d, chart)
  drawWinds(d, drawing)
  drawMarks(d, drawing)
  for (const segment of chart.segments) drawSegment(document, segment)
  document.restore()
}

function shape(document: PDFKit.PDFDocument, points: readonly Point[]): PDFKit.PDFDocument {
  for (const [i, { x, y }] of points.entries()) i === 0 ? document.moveTo(x, y) : document.lineTo(x, y)
  return document
}

function drawSegment(document: PDFKit.PDFDocument, { points, fit }: RateChart['segments'][number]): void {
  document.lineWidth(0.5).strokeColor(inks.soft)
  if (points.length > 1) shape(document, points).stroke()
  if (fit) shape(document, fit).lineWidth(1.4).strokeColor(inks.ink).stroke()
  if (points.length <= mostDots) for (const { x, y } of points) document.circle(x, y, 2).fill(inks.ink)
}

/** One line of small type with an edge or its middle at `x`. */
function write(sheet: Sheet, text: string, x: number, y: number, side: 'left' | 'middle' | 'right'): void {
  const [line] = sheet.set.lines(text, styles.foot, 200)
  if (!line) return
  const share = side === 'left' ? 0 : side === 'right' ? 1 : 0.5
  sheet.set.draw(line, x - line.width * share, y)
}

const upright = ({ document }: Sheet, x: number, top: number): PDFKit.PDFDocument =>
  document.moveTo(x, top).lineTo(x, height - margins.bottom)

function drawSeconds({ sheet, write: say }: Desk, chart: RateChart): void {
  for (const { y, value } of chart.seconds) {
    const { document } = sheet
    document.lineWidth(value === 0 ? 0.9 : 0.4).strokeColor(value === 0 ? inks.ink : inks.hair)
    document
      .moveTo(margins.left, y)
      .lineTo(sheet.width - margins.right, y)
      .stroke()
    write(sheet, say.signedSeconds(value), margins.left - 6, y - 5, 'right')
  }
}

function drawWinds({ sheet, write: say, words, dayOf }: Desk, { chart, top }: Drawing): void {
  sheet.document.lineWidth(0.5).strokeColor(wind)
  for (const { x } of chart.winds) upright(sheet, x, top).stroke()
  const bottom = height - margins.bottom
  chart.days.forEach(({ x, at }, i) => {
    const side = i === 0 ? 'left' : i === chart.days.length - 1 ? 'right' : 'middle'
    write(sheet, say.shortDate(dayOf(at)), x, bottom + 4, side)
    if (chart.winds.some(each => each.at === at)) write(sheet, words.papers.runIn.wound, x, bottom + 14, side)
  })
}

function drawMarks({ sheet }: Desk, { marks, top }: Drawing): void {
  for (const { x, text, from, line } of marks) {
    sheet.document.lineWidth(0.9).strokeColor(inks.margin).dash(3, { space: 2 })
    upright(sheet, x, top).stroke()
    sheet.document.undash()
    if (text) write(sheet, text, from, top - lineHeight * (line + 1) - 2, 'left')
  }
}

function markText({ words, write: say }: Desk, { kinds, turns }: ChartMark): string {
  const { nut, hands, done } = words.papers.runIn
  const texts = { nut: nut(say.number(turns)), hands, ...done }
  return kinds.map(kind => texts[kind]).join(', ')
}
