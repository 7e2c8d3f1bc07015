import { existsSync } from 'node:fs'
import { resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { bad, type Checked, good } from '../../../core/problems.ts'
import type { start } from '../../../core/words/en/start.ts'

/** What the start command is asked to do. */
export interface StartChoice {
  /** Whether a window or a browser may be opened. */
  readonly open: boolean
  /** The port asked for; nothing where the choice is ours. */
  readonly port?: number
  /** The ledger's file as an absolute path; nothing for the usual one. */
  readonly ledger?: string
  readonly demo: boolean
  readonly help: boolean
}

/** One argument that is wrong: how, and what was written. */
export interface ArgumentProblem {
  readonly code: keyof typeof start.arguments
  readonly field: string
}

const options = {
  ledger: { type: 'string' },
  port: { type: 'string' },
  demo: { type: 'boolean' },
  'no-open': { type: 'boolean' },
  help: { type: 'boolean' },
} as const

type Token = NonNullable<ReturnType<typeof parseArgs>['tokens']>[number]
type OptionToken = Extract<Token, { kind: 'option' }>

const wrong = (code: ArgumentProblem['code'], field: string): ArgumentProblem => ({ code, field })

const hasValue = (token: OptionToken) => token.value !== undefined && token.value !== ''

/** What is wrong with one option by itself: unknown, without its value, or with one it does not take. */
function optionProblems(token: OptionToken): ArgumentProblem[] {
  const known = Object.entries(options).find(([name]) => name === token.name)?.[1]
  if (!known) return [wrong('option-unknown', token.rawName)]
  if (known.type === 'boolean')
    return token.value === undefined ? [] : [wrong('value-unwanted', token.rawName)]
  const looksLikeOption = !token.inlineValue && token.value?.startsWith('--')
  return hasValue(token) && !looksLikeOption ? [] : [wrong('value-missing', token.rawName)]
}

function tokenProblems(tokens: readonly Token[]): ArgumentProblem[] {
  const seen = new Set<string>()
  return tokens.flatMap(token => {
    if (token.kind === 'positional') return [wrong('word-unknown', token.value)]
    if (token.kind !== 'option') return []
    if (seen.has(token.name)) return [wrong('option-repeated', token.rawName)]
    seen.add(token.name)
    return optionProblems(token)
  })
}

const isPort = (text: string) => /^\d{1,5}$/.test(text) && Number(text) <= 65535

/** What is wrong with the values: a port outside its range, a demonstration over a ledger that is there. */
function valueProblems({
  port,
  ledger,
  demo,
}: {
  port?: string
  ledger?: string
  demo: boolean
}): ArgumentProblem[] {
  const portProblems = port && !isPort(port) ? [wrong('port-range', port)] : []
  const over = demo && ledger && existsSync(ledger) ? [wrong('demo-over-ledger', ledger)] : []
  return [...portProblems, ...over]
}

const textOf = (value: unknown) => (typeof value === 'string' && value !== '' ? value : undefined)

/** The start command's arguments, or everything that is wrong with them. `folder` is what a relative FILE starts from. */
export function startChoice(args: readonly string[], folder: string): Checked<StartChoice, ArgumentProblem> {
  const { tokens, values } = parseArgs({ args: [...args], options, strict: false, tokens: true })
  const given = { port: textOf(values.port), ledger: textOf(values.ledger) }
  const ledger = given.ledger && resolve(folder, given.ledger)
  const demo = values.demo !== undefined
  const asked = { ...(given.port && { port: given.port }), ...(ledger && { ledger }), demo }
  const problems = [...tokenProblems(tokens), ...valueProblems(asked)]
  if (problems.length > 0) return bad(problems)
  return good<StartChoice>({
    open: values['no-open'] === undefined,
    ...(given.port && { port: Number(given.port) }),
    ...(ledger && { ledger }),
    demo,
    help: values.help !== undefined,
  })
}
