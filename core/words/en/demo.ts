/** What the demo command says. */
export const demo = {
  usage: 'npm run demo -- --out DIR [--day FILE] plays a day file on a fresh ledger in DIR.',
  outNeeded: 'Say with --out DIR where to write.',
  noDayFile: ({ file }: { file: string }) => `There is no file ${file}.`,
  stopped: ({ number, act }: { number: number; act: string }) => `Act ${number}, ${act}, was refused:`,
  unreadable: 'This is not a day file:',
  notJson: ({ reason }: { reason: string }) => `This is not JSON: ${reason}`,
  done: (v: { acts: number; repairs: number; papers: number; out: string }) =>
    `${v.acts} acts played: ${v.repairs} repairs, ${v.papers} papers in ${v.out}`,
}
