interface LedgerValues {
  readonly file: string
  /** How many entries are missing, where that is known; the last one before them, and the last of them, as they are written. */
  readonly count?: number
  readonly from?: string
  readonly to?: string
  /** Names of folders beside the file. */
  readonly folders?: string
  /** What to do about it, as `wayBack` says it; nothing where the page that shows it asks. */
  readonly way?: string
}

/** How to go on from the newest good copy of a ledger, or without one. */
export const wayBack = (backup: string | undefined): string =>
  backup
    ? `The last good backup is ${backup}. Start Countwheel with its pages and it offers to bring it back; npm run restore does the same.`
    : 'There is no backup beside it: take one from where yours are kept, and bring it back with npm run restore or on the pages.'

const missing = (count: number | undefined) =>
  count === undefined
    ? 'Entries are missing from'
    : count === 1
      ? 'One entry is missing from'
      : `${count} entries are missing from`

/** What the start command, the two hosts and the menu say. Values are file names, addresses and the like, never parts of sentences. */
export const start = {
  usage: [
    'npm start [-- options] opens the shop’s ledger.',
    '  --ledger FILE  the ledger to open, made when it is not there yet',
    '  --demo         open the demonstration shop, fresh each time',
    '  --port N       serve the pages on this port of this computer (0: any free one)',
    '  --no-open      serve the pages without opening a window or a browser',
    '  --help         this page',
  ].join('\n'),

  arguments: {
    'option-unknown': ({ given }: { given: string }) =>
      `${given} is not an option here (npm start -- --help lists them).`,
    'option-repeated': ({ given }: { given: string }) => `${given} is given more than once.`,
    'value-missing': ({ given }: { given: string }) => `${given} needs a value after it.`,
    'value-unwanted': ({ given }: { given: string }) => `${given} takes no value.`,
    'word-unknown': ({ given }: { given: string }) =>
      `“${given}” stands by itself: a ledger is named with --ledger FILE.`,
    'port-range': ({ given }: { given: string }) =>
      `--port ${given}: a port is a whole number from 0 to 65535.`,
    'demo-over-ledger': ({ given }: { given: string }) =>
      `--demo never plays over a ledger that is there: ${given} exists. Name a new file, or leave --ledger out.`,
  },

  building: 'Building the pages first (a few seconds) …',
  buildFailed: 'The pages could not be built; what went wrong stands above.',
  fetching: ({ seconds }: { seconds: number }) =>
    `Fetching Electron, which draws the desktop window (waiting at most ${seconds} seconds) …`,
  notFetched:
    'Electron could not be fetched now, so the ledger opens in the browser instead. “npx install-electron” fetches it at leisure.',
  windowFailed: 'The desktop window could not be opened, so the ledger opens in the browser instead.',
  playing: 'Laying out the demonstration shop in a fresh ledger …',

  inWindow: ({ file }: { file: string }) => `Countwheel has ${file} open in its window.`,
  atAddress: ({ file, address }: { file: string; address: string }) =>
    `Countwheel has ${file} open (Ctrl-C closes it) at ${address}`,
  demoAtAddress: ({ file, address }: { file: string; address: string }) =>
    `Countwheel has the demonstration shop ${file} open, fresh at each start (Ctrl-C closes it), at ${address}`,
  heldInWindow: ({ file }: { file: string }) =>
    `${file} is already open in another Countwheel on this computer. Go on there; nothing was opened twice.`,
  heldAtAddress: ({ file, address }: { file: string; address: string }) =>
    `${file} is already open in another Countwheel on this computer, and nothing was opened twice. A fresh address to it, good for one browser: ${address}`,
  otherWindow:
    'Countwheel’s window is already open with another ledger. Close it first, or add --no-open to use a browser.',
  portTaken: ({ port }: { port: number }) =>
    `Port ${port} of this computer is in use by another program. Leave --port out, or name another.`,
  portRefused: ({ port }: { port: number }) =>
    `This computer does not let Countwheel listen on port ${port}. Leave --port out, or name one above 1023.`,

  /** Why a ledger's file was not opened: what it is, and what to do. The file is always left as it was. */
  ledgerRefusals: {
    'ledger.foreign': ({ file }: LedgerValues) =>
      `${file} is not a Countwheel ledger and was left as it is. Name another file with --ledger.`,
    'ledger.damaged': ({ file, way = '' }: LedgerValues) =>
      `${file} is damaged and was left as it is. ${way}`,
    'ledger.foreignLog': ({ file, way = '' }: LedgerValues) =>
      `Beside ${file} lies a log (${file}-wal) that was not written for this file: somebody put another file in the place of the one that was open. Both were left as they are. ${way}`,
    'ledger.foreignFolders': ({ file, folders = '' }: LedgerValues) =>
      `Beside ${file} stand ${folders} of another ledger. Nothing was changed. Put the ledger they belong to back, or move them to another folder.`,
    'ledger.entriesMissing': ({ file, count, from, to, way = '' }: LedgerValues) =>
      `${missing(count)} ${file}: what was entered ${from ? `after ${from}` : 'from the beginning'} until ${to}. The file is sound but older than what was acknowledged, as when its log (${file}-wal) was lost or an older copy was put in its place. It was left as it is. ${way}`,
    'ledger.vanished': ({ file, way = '' }: LedgerValues) =>
      `There is no ledger at ${file} although its papers still stand beside it. No new one was begun. ${way}`,
    'ledger.newer': ({ file }: LedgerValues) =>
      `${file} was written by a newer Countwheel and was left as it is. Bring this Countwheel up to date to open it.`,
    'ledger.otherHistory': ({ file, way = '' }: LedgerValues) =>
      `${file} was made by another kind of Countwheel than this one and was left as it is. ${way}`,
    'ledger.brokenReferences': ({ file, way = '' }: LedgerValues) =>
      `${file} has entries that point to nothing, so it was not brought up to date and was left as it is. ${way}`,
    'ledger.inUse': ({ file }: LedgerValues) =>
      `${file} is open in another program on this computer. Close it there first; nothing was changed.`,
    'ledger.notAFile': ({ file }: LedgerValues) =>
      `${file} is not a file. Name the ledger’s file with --ledger.`,
    'ledger.noAccess': ({ file }: LedgerValues) =>
      `${file} cannot be opened and written to by you. See whether the disk is there and who the file and its folder belong to, or name another file with --ledger.`,
  },

  /** Requests that never reach the ledger: a heading and what to do. */
  refusals: {
    'request.hostForeign': {
      heading: 'This address is not the ledger’s',
      advice: 'Open the address that Countwheel printed when it started.',
    },
    'request.originForeign': {
      heading: 'Another page asked for this',
      advice:
        'The ledger answers its own pages only. Open the address that Countwheel printed when it started.',
    },
    'request.keyMissing': {
      heading: 'The ledger is closed to this browser',
      advice:
        'Open the address that Countwheel printed when it started. Each printed address lets in one browser: for another one, start Countwheel again in the same way. It prints a fresh address and leaves the open ledger as it is.',
    },
    'request.methodUnknown': {
      heading: 'That cannot be done here',
      advice: 'The ledger takes GET, HEAD, POST and PUT requests only.',
    },
    'request.tooLong': {
      heading: 'That is too much at once',
      advice: 'A photograph may have 12 megabytes, everything else 1 megabyte.',
    },
    'request.malformed': {
      heading: 'This address cannot be read',
      advice: 'Something in it is not written as an address is. Go back to the first page and on from there.',
    },
    'request.unknown': {
      heading: 'There is nothing at this address',
      advice: 'Go back to the first page and on from there.',
    },
    'request.failed': {
      heading: 'Something broke inside Countwheel',
      advice:
        'What was saved before is safe. Try again; if it comes back, close Countwheel and start it anew.',
    },
  },

  menu: {
    file: 'File',
    openFolder: 'Show the ledger’s file',
    print: 'Print this page …',
    close: 'Close the ledger',
    edit: 'Edit',
    find: 'Find …',
    go: 'Pages',
    view: 'View',
    theme: 'Light or dark workshop',
    zoomIn: 'Larger',
    zoomOut: 'Smaller',
    zoomReset: 'Usual size',
    fullScreen: 'Whole screen',
    pages: {
      counter: 'Counter',
      bench: 'Bench',
      shelf: 'Shelf',
      accounts: 'Accounts',
      stores: 'Stores',
      register: 'Register',
      shop: 'Shop',
    },
  },

  native: {
    savePaper: 'Save the paper',
    pdf: 'PDF paper',
  },
}

/** Why a request was turned away before it reached the ledger. */
export type Refusal = keyof typeof start.refusals

/** The pages of the ledger in the order of the page tabs, Ctrl/Cmd+1 first. */
export type PageName = keyof typeof start.menu.pages
