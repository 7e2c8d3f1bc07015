/** What the archive command says. */
export const archive = {
  usage: [
    'npm run archive -- --ledger FILE --out FILE        writes a ledger, its photographs and papers into one archive',
    'npm run archive -- --read FILE --into NEWLEDGER    makes a new ledger of an archive',
  ].join('\n'),
  noFile: ({ file }: { file: string }) => `There is no file ${file}.`,
  progress: ({ what, done }: { what: string; done: number }) => `  ${what.replaceAll('_', ' ')}: ${done}`,
  written: ({ file, bytes }: { file: string; bytes: number }) => `Written: ${file}, ${bytes} bytes.`,
  missing: ({ count }: { count: number }) =>
    `${count === 1 ? 'One photograph or paper was' : `${count} photographs or papers were`} not as kept beside the ledger and so ${count === 1 ? 'is' : 'are'} not in the archive; npm run verify names ${count === 1 ? 'it' : 'them'}.`,
  read: ({ file }: { file: string }) =>
    `Read back into ${file}. Look through it with npm run verify -- --ledger ${file}.`,
  noRoom: 'The disk is full. Nothing was left behind; free some room and try again.',

  /** Why it was not done. What was there before is always as it was. */
  refusals: {
    'archive.foreign': 'That file is not a Countwheel archive.',
    'archive.damaged':
      'That archive is damaged: it is cut short, or something in it was changed. Nothing was made of it; take another copy.',
    'archive.newer': 'That archive was written by a newer Countwheel. Bring this one up to date to read it.',
    'archive.unfit': 'What that archive holds does not fit together as a ledger. Nothing was made of it.',
    'archive.there': 'There is a file of that name already, and it was left as it is. Name a new one.',
  },
}
