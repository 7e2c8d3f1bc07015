import type { RunInContents } from '../../../core/papers/working.ts'
import { readingAsKept, verdictAsKept } from '../../../core/run-in/former.ts'
import { ratesBetween } from '../../../core/run-in/rates-between.ts'
import { seenAt } from '../../../core/run-in/seen.ts'
import type { ShelfReading } from '../../../core/run-in/shelf-reading.ts'
import { roundedValues, shownFigures } from '../../../core/run-in/shown.ts'
import type { Heard, SoundSheet } from '../../../core/run-in/sound-sheet.ts'
import { stretchesOf } from '../../../core/run-in/stretches.ts'
import { verdictValues } from '../../../core/run-in/verdict.ts'
import { type Block, type Section, section } from '../kit/flow.ts'
import { row } from '../kit/row.ts'
import { styles } from '../kit/styles.ts'
import { entry, hairline, piece, ruledEntry } from '../parts/entry.ts'
import { clock, commonFacts, type Fact, factRows, letterhead, ownerAndFacts, title } from '../parts/head.ts'
import { rateChartBlock } from '../parts/rate-chart.ts'
import { signatures } from '../parts/signature.ts'
import { type Desk, sentence } from '../parts/speech.ts'
import { type Column, table } from '../parts/table.ts'
import type { PaperKindPlan } from './paper-kind.ts'

/** How the clock ran on the shelf: verdict, figures, chart, and the same readings as a table. A record until it has passed. */
export const runInCertificate: PaperKindPlan<RunInContents> = {
  title: ({ repairNumber, outcome }, { papers }) =>
    papers.titleNumber(
      outcome === 'passed' ? papers.titles['run-in-certificate'] : papers.runIn.recordTitle,
      repairNumber,
    ),
  sections: (d, contents, heading) => [
    section(
      ...letterhead(d, contents.shop),
      ...title(d, heading),
      ...ownerAndFacts(d, contents, facts(d, contents)),
      ...clock(d, contents),
      ...verdict(d, contents),
      ...figures(d, contents),
      ...chart(d, contents),
    ),
    stretches(d, contents),
    readings(d, contents),
    section(
      ...sounds(d, contents),
      ...troubles(d, contents),
      ...signatures(d, [{ caption: d.words.papers.receipt.signed }, { caption: d.words.papers.date }]),
    ),
  ],
}

const seconds = ({ write, words }: Desk, value: number | null): string =>
  value === null ? words.papers.runIn.unknown : write.signedSeconds(value)

/** `±34 s`. */
const limitText = (d: Desk, { limitPerDay }: RunInContents): string =>
  seconds(d, Number(limitPerDay)).replace('+', '±')

function facts(d: Desk, contents: RunInContents): Fact[] {
  const say = d.words.papers.runIn
  const { startedAt, endedAt } = contents
  return [
    ...commonFacts(d, contents),
    [say.started, d.write.date(d.dayOf(startedAt))],
    ...(endedAt ? [[say.ended, d.write.date(d.dayOf(endedAt))] as const] : []),
    [say.limit, say.limitSaid(limitText(d, contents))],
  ]
}

function verdict(d: Desk, contents: RunInContents): Block[] {
  const { sheet, words, write } = d
  const say = words.papers.runIn
  const { outcome, endedAt, decidedBy, reason } = contents
  const judged = verdictAsKept(contents.figures)
  const on = endedAt ? write.date(d.dayOf(endedAt)) : ''
  const decision = outcome === 'passed' ? say.passed(on) : say.outcomes[outcome ?? 'open']
  const values = verdictValues(judged, { perDay: Number(contents.limitPerDay) })
  const faultOn = values.faultAt && write.date(d.dayOf(values.faultAt))
  return [
    ...ruledEntry(sheet, say.verdict, [
      piece([decision, decidedBy && say.by(decidedBy)].filter(Boolean).join(', '), styles.strong),
      piece(words.verdicts[judged.verdict](written(d, { ...values, faultOn }))),
    ]),
    ...(reason ? ruledEntry(sheet, say.reason, [piece(reason)]) : []),
    ...ruledEntry(
      sheet,
      say.stages,
      contents.stages.map(({ name, fromAt, toAt }) =>
        piece(say.stageOf(sentence(name), write.date(d.dayOf(fromAt)), write.date(d.dayOf(toAt)))),
      ),
    ),
  ]
}

/** The values of a sentence, figures rounded and written the shop's way. */
const written = ({ write }: Desk, values: Parameters<typeof roundedValues>[0]) =>
  Object.fromEntries(
    Object.entries(roundedValues(values)).map(([key, value]) => [
      key,
      typeof value === 'number' ? write.number(value) : value,
    ]),
  )

function figures(d: Desk, contents: RunInContents): Block[] {
  const { sheet, words, write } = d
  const say = words.papers.runIn
  const shown = shownFigures(verdictAsKept(contents.figures), logOf(contents))
  const perDay = (value: number | null) => (value === null ? say.unknown : say.perDay(seconds(d, value)))
  const unsigned = (value: number | null | undefined) =>
    typeof value === 'number' ? seconds(d, value).replace('+', '') : say.unknown
  const rows: Fact[] = [
    [
      say.rate,
      shown.plusMinus === null
        ? perDay(shown.ratePerDay)
        : say.plusMinus(perDay(shown.ratePerDay), unsigned(shown.plusMinus)),
    ],
    [say.trend, perDay(shown.trendOverWind)],
    [say.scatter, unsigned(shown.scatter)],
    [say.steady, unsigned(contents.steadySeconds)],
    [say.ran, say.ranOf(write.number(shown.observedDays ?? 0), write.number(shown.neededDays ?? 0))],
  ]
  const [named] = entry(sheet, say.figures, [], { above: 5, below: 0 })
  const laid = factRows(sheet, rows, { x: sheet.body, right: sheet.right })
  return laid.map((block, i) => ({
    ...block,
    draw: y => {
      if (i === 0) named?.draw(y)
      block.draw(y)
    },
  }))
}

function chart(d: Desk, contents: RunInContents): Block[] {
  const { sheet, words } = d
  const say = words.papers.runIn
  if (contents.readings.length === 0)
    return ruledEntry(sheet, say.chart, [piece(say.nothingRead)], { ruleAbove: hairline(sheet) })
  const note = [piece(say.chartNote(limitText(d, contents)), styles.small)]
  return [
    ...rateChartBlock(d, logOf(contents), Number(contents.limitPerDay)),
    ...row(sheet, [{ tag: 'P', x: sheet.body, width: sheet.width, pieces: note }], { above: 2, below: 6 }),
  ]
}

/** The log in today's shape. */
const logOf = ({ readings: log }: RunInContents) => log.map(readingAsKept)

/** The rate of each stretch between interventions. */
function stretches(d: Desk, contents: RunInContents): Section {
  const { sheet, words, write } = d
  const say = words.papers.runIn
  const known = stretchesOf(logOf(contents)).filter(({ points }) => points.length > 0)
  if (known.length === 0) return section()
  const right = (head: string, width: number): Column => ({ head, width, align: 'right' })
  const instant = (ms: number | undefined) => write.instant(new Date(ms ?? 0).toISOString())
  return table(
    sheet,
    say.stretches,
    [
      { head: say.from },
      { head: say.to, width: 104 },
      right(say.readings, 52),
      right(say.ratePerDay, 62),
      right(say.scatterShort, 52),
    ],
    known.map(({ points, line }, i) => ({
      margin: String(i + 1),
      cells: [
        instant(points[0]?.ms),
        instant(points.at(-1)?.ms),
        String(points.length),
        seconds(d, rounded(line?.slope)),
        line?.scatter == null ? say.unknown : seconds(d, rounded(line.scatter)).replace('+', ''),
      ].map(text => [piece(text)]),
    })),
  )
}

const rounded = (value: number | null | undefined): number | null =>
  typeof value === 'number' ? Math.round(value * 10) / 10 : null

/** Every reading that counts, with the rate since the one before in the same stretch. */
function readings(d: Desk, contents: RunInContents): Section {
  const { sheet, words, write } = d
  const say = words.papers.runIn
  if (contents.readings.length === 0) return section()
  const log = logOf(contents)
  const changes = ratesBetween(log)
  const right = (head: string, width: number): Column => ({ head, width, align: 'right' })
  return table(
    sheet,
    say.day,
    [{ head: say.at, width: 104 }, right(say.error, 52), right(say.change, 76), { head: say.seen }],
    log.map((reading, i) => ({
      margin: String(i + 1),
      cells: [
        write.instant(reading.at),
        reading.errorSeconds === undefined ? '' : seconds(d, rounded(reading.errorSeconds)),
        typeof changes[i] === 'number' ? say.perDay(seconds(d, rounded(changes[i]))) : '',
        seenText(d, reading, contents.readings[i]?.temperatureC),
      ].map(text => [piece(text)]),
    })),
  )
}

function seenText(d: Desk, reading: ShelfReading, temperatureC: number | undefined): string {
  const { words, write } = d
  const told = seenAt(reading).map(({ code, values }) =>
    words.seen[code]({
      ...written(d, values),
      ...(values.left === undefined ? {} : { left: seconds(d, rounded(values.left)) }),
    }),
  )
  const degrees =
    temperatureC === undefined ? [] : [words.papers.runIn.temperature(write.number(temperatureC))]
  return [...told, ...degrees].join(', ')
}

/** What was heard, each with its day. */
function sounds(d: Desk, contents: RunInContents): Block[] {
  const { sheet: page, words, write } = d
  const say = words.soundSheet
  const { sheet } = verdictAsKept(contents.figures)
  const heard = (name: string, one: Heard | null | undefined) =>
    one ? [say.of(name, say.on(one.right ? say.right : say.wrong, write.shortDate(d.dayOf(one.at))))] : []
  const each = (name: string, some: SoundSheet['hours']) => {
    const told = Object.entries(some).flatMap(([which, one]) => heard(which, one))
    return told.length > 0 ? [say.of(name, told.join(', '))] : []
  }
  const lines = [
    ...each(say.hours, sheet.hours),
    ...heard(say.half, sheet.half),
    ...each(say.quarters, sheet.quarters),
    ...heard(say.selfCorrected, sheet.selfCorrected),
    ...heard(say.silent, sheet.silent),
    ...heard(say.repeats, sheet.repeats),
  ]
  return lines.length > 0
    ? ruledEntry(
        page,
        say.heading,
        lines.map(line => piece(line)),
      )
    : []
}

function troubles(d: Desk, contents: RunInContents): Block[] {
  const { sheet, words, write } = d
  const say = words.papers.runIn
  const lines = verdictAsKept(contents.figures).faults.map(({ kind, at, ...values }) =>
    piece(say.troubleOf(write.date(d.dayOf(at)), words.faults[kind](values))),
  )
  return [
    ...(lines.length > 0 ? ruledEntry(sheet, say.troubles, lines) : []),
    ...ruledEntry(sheet, '', [piece(say.note, styles.small)]),
  ]
}
