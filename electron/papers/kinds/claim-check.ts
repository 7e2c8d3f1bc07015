import type { ClaimCheckContents } from '../../../core/papers/contents.ts'
import { type Block, beside, type Section, section } from '../kit/flow.ts'
import { row, ruleBlock } from '../kit/row.ts'
import { styles } from '../kit/styles.ts'
import { belongingEntry } from '../parts/belongings.ts'
import { cautions } from '../parts/cautions.ts'
import { conditionEntries } from '../parts/condition.ts'
import { cutLine } from '../parts/cut-line.ts'
import { entry, hairline, piece, ruledEntry } from '../parts/entry.ts'
import { clock, type Fact, factRows, letterhead, ownerPieces, title } from '../parts/head.ts'
import { qr } from '../parts/qr.ts'
import { signatures } from '../parts/signature.ts'
import type { Desk } from '../parts/speech.ts'
import type { PaperKindPlan } from './paper-kind.ts'

const qrSide = 60

/** Both parts share one page: entries stand closer than on other papers. */
const close = { above: 3, below: 3 }

/** What was handed over the counter: the shop's part above, the owner's part to tear off below; on a small page the owner's part alone. */
export const claimCheck: PaperKindPlan<ClaimCheckContents> = {
  title: ({ number }, { papers }) => papers.titleNumber(papers.titles['claim-check'], number),
  sections: (d, contents, heading) => [
    d.sheet.narrow ? ownerPart(d, contents, heading) : shopPart(d, contents, heading),
  ],
  slip: (d, contents, heading) =>
    d.sheet.narrow
      ? undefined
      : {
          cut: cutLine(d, d.words.papers.claim.cutHere(heading)),
          sections: [ownerPart(d, contents, heading)],
        },
}

function shopPart(d: Desk, contents: ClaimCheckContents, heading: string): Section {
  const say = d.words.papers.claim
  return section(
    ...letterhead(d, contents.shop),
    ...title(d, heading, styles.halfTitle),
    ...handedOver(d, contents),
    ...ruledEntry(d.sheet, say.fault, [piece(contents.fault)], close),
    ...conditionEntries(d, contents, close),
    ...belongingEntry(d, contents.belongings, close),
    ...cautions(d, contents.cautions),
    ...signatures(d, [
      { caption: say.signedIn, signed: contents.signedIn },
      { caption: say.signedOut, signed: contents.signedOut },
    ]),
  )
}

function ownerPart(d: Desk, contents: ClaimCheckContents, heading: string): Section {
  const { sheet, words } = d
  const say = words.papers.claim
  const fee = contents.estimate.fee !== undefined && contents.estimate.feeCredited ? [say.feeCredited] : []
  const notes = [say.keepThis, say.estimatedNote, ...fee, say.thirdParty].join(' ')
  const pieces = [piece(notes, styles.small)]
  return section(
    ...slipHead(d, contents, heading),
    ...handedOver(d, contents),
    ...belongingEntry(d, contents.belongings, close),
    ...row(sheet, [{ tag: 'P', x: sheet.body, width: sheet.width, pieces }], { above: 3 }),
  )
}

/** Title and shop on one line, for the owner's part; one under the other on a small page. */
function slipHead({ sheet }: Desk, { shop }: ClaimCheckContents, heading: string): Block[] {
  const half = sheet.width * 0.46
  const lines = [shop.addressLines, [shop.phone, shop.email]].map(parts => parts.filter(Boolean).join(' · '))
  const title = { tag: 'H1' as const, pieces: [piece(heading, styles.halfTitle)] }
  const from = {
    tag: 'P' as const,
    pieces: [piece(shop.name, styles.strong), ...lines.map(text => piece(text, styles.small))],
  }
  const place = { x: sheet.body, width: sheet.width }
  if (sheet.narrow)
    return [
      ...row(sheet, [{ ...from, ...place }], { below: 2 }),
      ...row(sheet, [{ ...title, ...place }], { below: 4, ruleBelow: hairline(sheet) }),
    ]
  const right = { x: sheet.body + half + 10, width: sheet.width - half - 10, align: 'right' as const }
  return row(
    sheet,
    [
      { ...title, ...place, width: half },
      { ...from, ...right },
    ],
    { above: 2, below: 4, ruleBelow: hairline(sheet) },
  )
}

/** Owner, dates and costs with the code at the right, then the clock: the same on both parts. */
function handedOver(d: Desk, contents: ClaimCheckContents): Block[] {
  const { sheet, words } = d
  const ownerWidth = sheet.narrow ? sheet.width : sheet.width * 0.36
  const factsAt = {
    x: sheet.narrow ? sheet.body : sheet.body + ownerWidth + 12,
    right: sheet.right - qrSide - 18,
  }
  const owner = entry(sheet, words.papers.owner, ownerPieces(contents.owner), {
    span: { x: sheet.body, width: ownerWidth },
  })
  const dated = factRows(sheet, facts(d, contents), factsAt)
  const figure = qr(sheet, contents.qr, words.papers.claim.qrAlt(contents.qr), {
    right: sheet.right,
    side: qrSide,
  })
  return [
    ...(sheet.narrow ? [...owner, beside(dated, [figure])] : [beside(owner, dated, [figure])]),
    ruleBlock(sheet, hairline(sheet)),
    ...clock(d, contents, close),
  ]
}

function facts({ words, write }: Desk, contents: ClaimCheckContents): Fact[] {
  const say = words.papers.claim
  const { fee, low, high } = contents.estimate
  const { deposit, estimatedOn, repairNumber } = contents
  const expected = [low, high].filter(amount => amount !== undefined).map(write.money)
  const known: readonly (readonly [string, string | undefined])[] = [
    [words.papers.date, write.date(contents.issuedOn)],
    [words.papers.repair, repairNumber === contents.number ? undefined : repairNumber],
    [say.estimatedDate, estimatedOn ? write.date(estimatedOn) : say.toBeTold],
    [say.expected, expected.length > 0 ? [...new Set(expected)].join(' – ') : undefined],
    [say.estimateFee, fee === undefined ? undefined : write.money(fee)],
    [say.deposit, deposit === undefined ? undefined : write.money(deposit)],
  ]
  return known.flatMap(([label, value]) => (value === undefined ? [] : [[label, value] as const]))
}
