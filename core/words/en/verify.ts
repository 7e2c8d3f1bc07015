import type { WorkingKind } from '../../papers/kinds.ts'
import { workingTitles } from './paper-names.ts'

type Values = Readonly<Record<string, string | number>>

const paper = ({ kind, number, of, handedOn }: Values) =>
  handedOn
    ? `The ${workingTitles[kind as WorkingKind].toLowerCase()} of ${of} handed out on ${handedOn}`
    : `The ${String(kind).replaceAll('-', ' ')} ${number}`
const series = ({ series: name }: Values) =>
  name === 'repair'
    ? 'repairs'
    : String(name).endsWith('/')
      ? `the estimates of repair ${String(name).slice(0, -1)}`
      : `the series “${String(name).replaceAll('-', ' ')}”`
const through = ({ from, to }: Values, one: string, several: string) =>
  from === to ? `${one} ${from} is` : `${several} ${from} to ${to} are`

/** What the verify command says: what it looked at, and what is wrong where. */
export const verify = {
  usage:
    'npm run verify -- --ledger FILE [--json] looks through a ledger without changing it. It ends with 0 where all is sound, 1 where something is wrong, 2 where it could not look.',
  ledgerNeeded: 'Say with --ledger FILE which ledger to look through.',
  noFile: ({ file }: { file: string }) => `There is no file ${file}.`,
  noRoom: ({ folder }: { folder: string }) =>
    `A copy to look through did not fit into ${folder}. Free some room there, or set TMPDIR to a folder that has it.`,
  sound: ({ file }: { file: string }) => `${file} is sound.`,
  unsound: ({ file, faults }: { file: string; faults: number }) =>
    `${file}: ${faults === 1 ? 'one thing is' : `${faults} things are`} wrong. Copy the file away as it is before anything else is done with it; the backups beside it are looked through in the same way.`,

  checks: {
    file: (n: number) => `File: ${n} pages`,
    shape: (n: number) => `Tables, indexes and triggers: ${n}`,
    copy: (n: number) => `Backups held against their manifest: ${n}`,
    dayBook: (n: number) => `Day book: ${n} rows`,
    numbers: (n: number) => `Numbers: ${n} given`,
    papers: (n: number) => `Papers issued: ${n}`,
    handedPapers: (n: number) => `Papers handed out: ${n}`,
    estimates: (n: number) => `Repairs on another’s estimate: ${n}`,
    derived: (n: number) => `Standings, balances, settled taxes and stock: ${n}`,
    money: (n: number) => `Credits, accounts, drawer counts and closed periods: ${n}`,
    photographs: (n: number) => `Photographs: ${n}`,
    keptPapers: (n: number) => `Papers as they were drawn: ${n}`,
  },
  good: 'in order',

  faults: {
    'file.unopenable': () => 'The file cannot be opened: it is cut short, or its first pages are damaged.',
    'file.damaged': (v: Values) => `The file itself is damaged: ${v.what}.`,
    'copy.changed': () =>
      'This backup is not the file that was written: its bytes are not those its manifest tells of.',
    'file.reference': (v: Values) =>
      `Row ${v.row} of the table ${v.table} points to something in ${v.parent} that is not there.`,
    'shape.missing': (v: Values) => `The ${v.type} ${v.name} is missing.`,
    'shape.changed': (v: Values) => `The ${v.type} ${v.name} is not as it was made.`,
    'shape.foreign': (v: Values) => `The ${v.type} ${v.name} does not belong in a ledger.`,
    'dayBook.missing': (v: Values) =>
      `${v.count === '?' ? 'Entries' : v.count === 1 ? 'One entry' : `${v.count} entries`} that were acknowledged are not in the ledger: what was entered ${v.from ? `after ${v.from}` : 'from the beginning'} until ${v.to}. Look for a backup, or for the log (-wal) that lay beside the file.`,
    'dayBook.redacted': (v: Values) =>
      `The text of day book row ${v.id} was taken out on ${v.at} by ${v.by}: ${v.reason}. The chain holds.`,
    'dayBook.emptied': (v: Values) =>
      `The text of day book row ${v.id} (${v.at}, ${v.act}) is gone, and no entry says that it was taken out.`,
    'dayBook.gap': (v: Values) => `In the day book, ${through(v, 'row', 'rows')} missing.`,
    'dayBook.chain': (v: Values) =>
      `Day book row ${v.id} (${v.at}, ${v.act}) does not carry the hash of the row before it: that row, or this one, was changed, added or taken out.`,
    'dayBook.changed': (v: Values) =>
      `Day book row ${v.id} (${v.at}, ${v.act}) was changed after it was written: it does not hash to what it carries.`,
    'dayBook.untold': (v: Values) =>
      `${paper(v)} is of ${v.at}, but no act in the day book tells of it: acts at its end are missing.`,
    'number.gap': (v: Values) => `In ${series(v)}, ${through(v, 'number', 'numbers')} missing.`,
    'number.double': (v: Values) => `In ${series(v)}, number ${v.number} was given twice.`,
    'number.last': (v: Values) =>
      `In ${series(v)}, the last number given is ${v.given}, but the next one would follow ${v.last}.`,
    'paper.unreadable': (v: Values) => `${paper(v)} cannot be read: ${v.reason}.`,
    'paper.hash': (v: Values) => `${paper(v)} was changed afterwards: its contents do not fit their hash.`,
    'paper.column': (v: Values) =>
      `${paper(v)} says ${v.says} for ${v.field}, but the ledger keeps ${v.kept} beside it.`,
    'paper.recomputes': (v: Values) =>
      `${paper(v)}: its lines, priced again by its own rules, do not come to the figures it shows.`,
    'paper.total': (v: Values) =>
      `${paper(v)} comes to ${v.says} in minor units, but the ledger keeps ${v.kept} beside it.`,
    'paper.tax': (v: Values) =>
      `${paper(v)} has a tax of ${v.says} in minor units, but the ledger keeps ${v.kept} beside it.`,
    'paper.taxes': (v: Values) => `${paper(v)}: the taxes kept beside it are not those of its lines.`,
    'estimate.together': (v: Values) =>
      `Repair ${v.repair} stands on the estimate of repair ${v.lead}, but their owner, paper or sending differ.`,
    'derived.stage': (v: Values) =>
      `Repair ${v.number} is listed as “${v.kept}”, but by what is on record it stands at “${v.stage}”.`,
    'derived.due': (v: Values) =>
      `On repair ${v.number}, ${v.due} is due in minor units by its invoices and payments, but ${v.kept} is listed.`,
    'derived.settledTax': (v: Values) =>
      `On repair ${v.number}, the tax kept as settled is not that of its invoices and payments.`,
    'money.credited': (v: Values) =>
      `The credit notes of invoice ${v.number} do not fit it: ${v.left} of it is left in minor units.`,
    'money.account': (v: Values) =>
      `On the account of ${v.name}, ${v.held} is held in minor units: less than nothing.`,
    'money.drawer': (v: Values) =>
      `The count of the drawer of ${v.day} expected ${v.kept} in minor units, but the entries come to ${v.expected}.`,
    'money.closed': (v: Values) =>
      `${v.entries === 1 ? 'One entry was' : `${v.entries} entries were`} booked into the books closed to ${v.to}, after they were closed.`,
    'derived.stock': (v: Values) =>
      `Of the part ${v.name}, ${v.moved} are in stock by its moves, but ${v.kept} are listed.`,
    'photograph.missing': (v: Values) => `The photograph ${v.hash} is not beside the ledger.`,
    'photograph.damaged': (v: Values) => `The photograph ${v.hash} has other bytes than it was kept with.`,
    'photograph.length': (v: Values) =>
      `The photograph ${v.hash} has ${v.found} bytes, but the ledger lists ${v.kept}.`,
    'keptPaper.missing': (v: Values) =>
      `${paper(v)} is not beside the ledger as it was first drawn (${v.hash}.pdf); it can only be drawn again.`,
    'keptPaper.damaged': (v: Values) =>
      `${paper(v)} has other bytes beside the ledger than it was first drawn with (${v.hash}.pdf).`,
    'keptPaper.length': (v: Values) =>
      `${paper(v)} has ${v.found} bytes beside the ledger, but the ledger lists ${v.kept}.`,
    'check.stopped': (v: Values) => `This could not be looked through to its end: ${v.reason}.`,
  } satisfies Record<string, (values: Values) => string>,
}
