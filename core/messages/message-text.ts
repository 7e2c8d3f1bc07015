import type { Minor } from '../money/minor.ts'
import type { MessageAbout } from '../vocabulary/work.ts'
import type { Words } from '../words/en/index.ts'
import type { Formats } from '../words/format.ts'

/** What a message can speak of; what is not known stays out of it. */
export interface MessageFacts {
  readonly owner: string
  readonly shop: string
  readonly phone: string
  readonly repairNumber: number
  readonly clock: string
  readonly estimatedOn: string | null
  readonly due: Minor | null
  readonly estimate: {
    readonly number: string
    readonly total: Minor
    readonly validUntil: string | null
  } | null
  readonly finding: string | null
}

/** A message to an owner in the catalogue's language, ready to be read over, changed and sent. Empty for `other`: that is the writer's own. */
export function messageText(
  about: MessageAbout,
  facts: MessageFacts,
  words: Pick<Words, 'messages'>,
  formats: Formats,
): string {
  const { messages: say } = words
  const estimate = facts.estimate && {
    number: facts.estimate.number,
    total: formats.money(facts.estimate.total),
    until: facts.estimate.validUntil && formats.date(facts.estimate.validUntil),
  }
  const bodies: Record<MessageAbout, readonly (string | null)[]> = {
    ready: [
      say.ready(facts.clock),
      facts.due !== null && facts.due > 0 ? say.toPay(formats.money(facts.due)) : null,
      say.bring,
    ],
    estimate: [
      say.estimate(facts.clock),
      estimate && say.comesTo(estimate.number, estimate.total, estimate.until),
      say.askWord,
    ],
    finding: [
      say.finding(facts.clock),
      facts.finding,
      estimate && say.comesTo(estimate.number, estimate.total, estimate.until),
      say.askWord,
    ],
    reminder: [
      say.reminder(facts.clock),
      estimate && say.comesTo(estimate.number, estimate.total, estimate.until),
      say.askWord,
    ],
    delay: [
      say.delay(facts.clock),
      facts.estimatedOn && say.estimatedNow(formats.longDate(facts.estimatedOn)),
      say.testTakesTime,
    ],
    uncollected: [
      say.uncollected(facts.clock),
      facts.due !== null && facts.due > 0 ? say.toPay(formats.money(facts.due)) : null,
      say.bring,
    ],
    other: [],
  }
  const body = bodies[about].filter(Boolean).join(' ')
  if (body === '') return ''
  const close = [say.reference(facts.repairNumber), facts.shop, facts.phone].filter(Boolean).join('\n')
  return `${say.greeting(facts.owner)}\n\n${body}\n\n${close}`
}
