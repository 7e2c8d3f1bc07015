/** What is said of taking the books out: on the page, in calendars, by the archive command. */
export const exports = {
  title: 'Take the books out',
  note: 'Made anew from the ledger each time; nothing in it changes.',
  tables: 'As tables for a spreadsheet (CSV)',
  exactHint: 'A text that a spreadsheet would run as a formula has a ’ set before it.',
  names: {
    owners: 'owners',
    contacts: 'phones and e-mails',
    clocks: 'clocks',
    repairs: 'repairs',
    documents: 'papers',
    'document-lines': 'lines of papers',
    payments: 'payments',
    'write-offs': 'write-offs',
    'drawer-counts': 'counts of the drawer',
    stock: 'stock',
    'stock-moves': 'moves of stock',
    labour: 'bench time',
    'day-book': 'day book',
  },
  others: 'For other programs',
  files: {
    journal: 'journal for plain-text accounting',
    dates: 'dates for a calendar (iCalendar)',
    cards: 'owners for an address book (vCard)',
  },
  tax: 'This period as a table (CSV)',
  archive:
    'Everything together, photographs too, in one file that can be read back into an empty ledger, is an archive: whoever keeps this computer makes one while the ledger is closed. The guide that came with the program says how.',

  calendar: {
    estimated: ({ number, owner }: { number: number; owner: string }) =>
      `Repair ${number}: estimated date, ${owner}`,
    runIn: {
      wind: ({ number }: { number: number }) => `Repair ${number}: wind on the run-in shelf`,
      reading: ({ number }: { number: number }) => `Repair ${number}: reading on the run-in shelf`,
    },
    runInEnds: ({ number }: { number: number }) => `Repair ${number}: run-in planned to end`,
    order: ({ part }: { part: string }) => `Order due: ${part}`,
    outside: ({ number, vendor }: { number: number; vendor: string }) =>
      `Repair ${number}: outside work due back from ${vendor}`,
  },
}
