/** The names of the few messages between the pages and the desktop program. */
export const channels = {
  savePaper: 'countwheel:save-paper',
  printPaper: 'countwheel:print-paper',
  openLedgerFolder: 'countwheel:open-ledger-folder',
  menu: 'countwheel:menu',
} as const
