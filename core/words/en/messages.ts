/** Messages to owners, to be read over before they are sent. */
export const messages = {
  greeting: (owner: string) => `Dear ${owner},`,
  ready: (clock: string) => `Your ${clock} is ready to be collected.`,
  toPay: (amount: string) => `There is ${amount} to pay.`,
  bring:
    'Please bring your claim check; anyone who collects for you needs your written word and proof of who they are.',
  estimate: (clock: string) => `Here is the estimate for your ${clock}.`,
  comesTo: (number: string, total: string, until: string | null) =>
    `Estimate ${number} comes to ${total}${until ? `, valid until ${until}` : ''}.`,
  askWord: 'Please tell us whether we may go ahead.',
  finding: (clock: string) =>
    `When your ${clock} was taken apart we found something that could not be seen before.`,
  reminder: (clock: string) => `We are waiting for your word on your ${clock}.`,
  delay: (clock: string) => `Your ${clock} will be later than we estimated.`,
  estimatedNow: (date: string) => `We now estimate ${date}.`,
  testTakesTime: 'Part of that time is its test: a clock is run for at least a full wind before it leaves.',
  uncollected: (clock: string) => `Your ${clock} has been ready for some time and is still with us.`,
  reference: (number: number) => `Repair ${number}`,
}
