import type { CertificateReading, RunInContents } from '../../../core/papers/working.ts'
import { ratesBetween } from '../../../core/rate/rates-between.ts'
import { roundedValues, shownFigures } from '../../../core/run-in/shown.ts'
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
  const { outcome, endedAt, decidedBy, reason, figures: assessed } = contents
  const on = endedAt ? write.date(d.dayOf(endedAt)) : ''
  const decision = outcome === 'passed' ? say.passed(on) : say.outcomes[outcome ?? 'open']
  const { code, values } = assessed.verdict
  return [
    ...ruledEntry(sheet, say.verdict, [
      piece([decision, decidedBy && say.by(decidedBy)].filter(Boolean).join(', '), styles.strong),
      piece(words.verdicts[code](written(d, values))),
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
  const shown = shownFigures(contents.figures)
  const perDay = (value: number | null) => (value === null ? say.unknown : say.perDay(seconds(d, value)))
  const rows: Fact[] = [
    [say.rate, perDay(shown.ratePerDay)],
    [say.net, seconds(d, shown.netPerWind)],
    [say.trend, perDay(shown.trendOverWind)],
    [say.scatter, shown.scatter === null ? say.unknown : seconds(d, shown.scatter).replace('+', '')],
    [say.ran, say.ranOf(write.number(shown.ranDays ?? 0), write.number(shown.neededDays ?? 0))],
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
    ...rateChartBlock(d, contents.readings, Number(contents.limitPerDay)),
    ...row(sheet, [{ tag: 'P', x: sheet.body, width: sheet.width, pieces: note }], { above: 2, below: 6 }),
  ]
}

/** The rate of each stretch between interventions. */
function stretches(d: Desk, { figures: assessed }: RunInContents): Section {
  const { sheet, words, write } = d
  const say = words.papers.runIn
  const { segments } = assessed.rate
  if (segments.length === 0) return section()
  const right = (head: string, width: number): Column => ({ head, width, align: 'right' })
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
    segments.map(({ from, to, readings: count, robustRatePerDay, residualSd }, i) => ({
      margin: String(i + 1),
      cells: [
        write.instant(from),
        write.instant(to),
        String(count),
        seconds(d, rounded(robustRatePerDay)),
        residualSd === null ? say.unknown : seconds(d, rounded(residualSd)).replace('+', ''),
      ].map(text => [piece(text)]),
    })),
  )
}

const rounded = (value: number | null): number | null => (value === null ? null : Math.round(value * 10) / 10)

/** Every reading that counts, with the rate since the one before in the same stretch. */
function readings(d: Desk, contents: RunInContents): Section {
  const { sheet, words, write } = d
  const say = words.papers.runIn
  if (contents.readings.length === 0) return section()
  const changes = ratesBetween(contents.readings)
  const right = (head: string, width: number): Column => ({ head, width, align: 'right' })
  return table(
    sheet,
    say.day,
    [{ head: say.at, width: 104 }, right(say.error, 52), right(say.change, 76), { head: say.seen }],
    contents.readings.map((reading, i) => ({
      margin: String(i + 1),
      cells: [
        write.instant(reading.at),
        seconds(d, rounded(reading.errorSeconds)),
        changes[i] === null || changes[i] === undefined ? '' : say.perDay(seconds(d, rounded(changes[i]))),
        seenText(d, reading),
      ].map(text => [piece(text)]),
    })),
  )
}

function seenText({ words, write }: Desk, reading: CertificateReading): string {
  const say = words.papers.runIn
  const { stopped, wound, handsSet, nutTurns, strikeRight, chimeRight, heard, inBeat, temperatureC } = reading
  const seen = [
    stopped && say.stopped,
    wound && say.wound,
    handsSet && say.hands,
    nutTurns && say.nut(write.number(nutTurns)),
    strikeRight !== undefined && (strikeRight ? say.strikeRight : say.strikeWrong),
    chimeRight !== undefined && (chimeRight ? say.chimeRight : say.chimeWrong),
    heard && say.heard(heard.at, heard.blows),
    inBeat !== undefined && (inBeat ? say.inBeat : say.outOfBeat),
    temperatureC !== undefined && say.temperature(write.number(temperatureC)),
  ]
  return seen.filter(Boolean).join(', ')
}

function troubles(d: Desk, { figures: assessed }: RunInContents): Block[] {
  const { sheet, words, write } = d
  const say = words.papers.runIn
  const lines = assessed.troubles.map(({ kind, at, ...values }) =>
    piece(say.troubleOf(write.date(d.dayOf(at)), words.troubles[kind](values))),
  )
  return [
    ...(lines.length > 0 ? ruledEntry(sheet, say.troubles, lines) : []),
    ...ruledEntry(sheet, '', [piece(say.note, styles.small)]),
  ]
}
