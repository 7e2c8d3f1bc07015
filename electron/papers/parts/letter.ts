import { type Minor, minor } from '../../../core/money/minor.ts'
import type { PaperBelonging, PaperTop } from '../../../core/papers/contents.ts'
import { type Block, type Section, section, space } from '../kit/flow.ts'
import { row } from '../kit/row.ts'
import { styles } from '../kit/styles.ts'
import type { Style } from '../kit/typesetter.ts'
import { thingText } from './belongings.ts'
import { piece } from './entry.ts'
import { letterhead, ownerPieces, title } from './head.ts'
import { signatures } from './signature.ts'
import type { Desk } from './speech.ts'

/** A paragraph of a letter. */
export const paragraph = ({ sheet }: Desk, text: string, style: Style = styles.letter): Block[] =>
  row(sheet, [{ tag: 'P', x: sheet.body, width: sheet.width, pieces: [piece(text, style)] }], { below: 9 })

/** A sheet's letterhead, to whom and when, and what it is about. */
export function letterHead(d: Desk, contents: PaperTop, heading: string): Block[] {
  const { sheet, words, write } = d
  const { issuedOn, repairNumber, shop } = contents
  const { phone: _, ...owner } = contents.owner
  const half = sheet.width * 0.6
  const cells = [
    { tag: 'P' as const, x: sheet.body, width: half, pieces: ownerPieces(owner) },
    {
      tag: 'P' as const,
      x: sheet.body + half + 12,
      width: sheet.width - half - 12,
      align: 'right' as const,
      pieces: [
        piece(write.longDate(issuedOn)),
        piece(repairNumber ? words.papers.letter.repair(repairNumber) : '', styles.small),
      ],
    },
  ]
  return [
    ...letterhead(d, shop),
    ...row(sheet, cells, { above: 16, below: 14 }),
    ...title(d, heading, styles.halfTitle),
    space(10),
  ]
}

/** The closing of a letter with a line to sign on. */
export const letterEnd = (d: Desk, shopName: string): Section =>
  section(
    ...signatures(d, [{ caption: d.words.papers.letter.signed(shopName) }, { caption: d.words.papers.date }]),
  )

/** What there is to pay, or what is held, in a sentence. */
export function toPayText({ words, write }: Desk, toPay: Minor): string {
  const { letter } = words.papers
  if (toPay > 0) return letter.toPay(write.money(toPay))
  return toPay < 0 ? letter.held(write.money(minor(-toPay))) : letter.nothingToPay
}

/** What the owner gets back with the clock, in a sentence; nothing where there is nothing. */
export function belongingsSaid(d: Desk, belongings: readonly PaperBelonging[]): Block[] {
  const things = belongings.map(thing => thingText(d, thing)).join(', ')
  return things ? paragraph(d, d.words.papers.letter.withIt(things)) : []
}
