import type { PageName } from '../../core/words/en/start.ts'

/** What the menu asks the pages to do: turn to a page, go to the find box, change the light. */
export type MenuCommand = PageName | 'find' | 'theme'

/** How a save or print ended; `failed` where the file could not be written or opened, or the paper is not there. */
export type PaperOutcome = 'done' | 'cancelled' | 'failed'

/** What the desktop window offers the pages as `window.countwheel`; absent in a browser. */
export interface Bridge {
  /** Asks where to, and saves the paper at `path` (as in `/papers/12.pdf`) there. */
  savePaper(path: string): Promise<PaperOutcome>
  /** Opens the paper at `path` in the computer's PDF program, which prints it. */
  printPaper(path: string): Promise<PaperOutcome>
  /** Shows the ledger's file in its folder. */
  openLedgerFolder(): Promise<void>
  /** Calls `listener` for each command of the menu, until the returned function is called. */
  onMenu(listener: (command: MenuCommand) => void): () => void
}
