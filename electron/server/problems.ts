import { HTTPException } from 'hono/http-exception'
import type { z } from 'zod'
import { type PlainCode, type Problem, problem } from '../../core/problems.ts'
import { en } from '../../core/words/en/index.ts'
import { sentences } from '../../core/words/en/sentences.ts'
import { problemText } from '../../core/words/problem-text.ts'
import { LedgerGone } from '../../db/file/ledger-refused.ts'
import { Refusal } from '../../db/rows/refusal.ts'

type Issue = z.core.$ZodIssue

const pathText = (path: readonly PropertyKey[]): string =>
  path
    .map((part, i) => (typeof part === 'number' ? `[${part}]` : `${i > 0 ? '.' : ''}${String(part)}`))
    .join('')

const bound = (n: number | bigint): number => Number(n)

/** What stands at the path in the input; undefined when nothing does. */
const at = (input: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (value, key) => (typeof value === 'object' && value !== null ? Reflect.get(value, key) : undefined),
    input,
  )

/** Whether a schema says itself what is wrong (`saying` in requests/fields.ts). */
const isSaid = (code: unknown): code is PlainCode =>
  typeof code === 'string' && Object.hasOwn(sentences, code)

/** What zod found, in the shop's own codes. */
function issueProblems(issue: Issue, input: unknown): Problem[] {
  const field = pathText(issue.path)
  switch (issue.code) {
    case 'invalid_type':
      return [problem(at(input, issue.path) === undefined ? 'input.required' : 'input.wrongType', field)]
    case 'too_big':
      return [
        problem(issue.origin === 'string' ? 'input.tooLong' : 'input.tooLarge', field, {
          most: bound(issue.maximum),
        }),
      ]
    case 'too_small':
      if (issue.origin === 'string') return [problem('input.required', field)]
      return [
        problem(issue.origin === 'array' ? 'input.tooShort' : 'input.tooSmall', field, {
          least: bound(issue.minimum),
        }),
      ]
    case 'invalid_value':
      return [problem('input.notOneOf', field, { choices: issue.values.map(String).join(', ') })]
    case 'unrecognized_keys':
      return issue.keys.map(name =>
        problem('input.unknownField', field ? `${field}.${name}` : name, { name }),
      )
    case 'invalid_union':
      return unionProblems(issue, field, at(input, issue.path))
    case 'custom':
      return [problem(isSaid(issue.params?.code) ? issue.params.code : 'input.invalid', field)]
    default:
      return [problem('input.invalid', field)]
  }
}

/** Of a union, the branch that came closest speaks. */
function unionProblems(
  issue: Extract<Issue, { code: 'invalid_union' }>,
  field: string,
  input: unknown,
): Problem[] {
  const branches = [...issue.errors].sort((a, b) => a.length - b.length)
  const closest = branches.find(branch => branch.some(i => i.path.length > 0)) ?? branches[0] ?? []
  const problems = closest.flatMap(one => issueProblems(one, input))
  if (problems.length === 0) return [problem('input.invalid', field)]
  return problems.map(p => ({ ...p, field: [field, p.field].filter(Boolean).join('.') }))
}

/** Everything zod found wrong with `input`. */
export const inputProblems = (error: z.core.$ZodError, input: unknown): Problem[] =>
  error.issues.flatMap(issue => issueProblems(issue, input))

/** Throws everything zod found wrong as one refusal; the hook of every validator. */
export const refuseInput = (result: { success: boolean; error?: z.core.$ZodError; data: unknown }): void => {
  if (!result.success && result.error) throw new Refusal(inputProblems(result.error, result.data))
}

interface Answer {
  readonly status: 400 | 404 | 413 | 422 | 500 | 507
  readonly problems: readonly Problem[]
}

/** The one table from what went wrong to what is answered. Only what is a bug or a broken disk is a 5xx. */
export function answerTo(error: unknown): Answer {
  if (error instanceof Refusal)
    return {
      status: error.problems.every(p => p.code.endsWith('.unknown')) ? 404 : 422,
      problems: error.problems,
    }
  if (error instanceof HTTPException)
    return error.status === 413
      ? { status: 413, problems: [problem('request.tooLong', '')] }
      : { status: 400, problems: [problem('request.notJson', '')] }
  if (error instanceof LedgerGone) return { status: 422, problems: [problem('ledger.gone', '')] }
  const code = (error as { code?: unknown } | null)?.code
  if (code === 'SQLITE_FULL' || code === 'ENOSPC' || code === 'EDQUOT')
    return { status: 507, problems: [problem('request.diskFull', '')] }
  if (typeof code === 'string' && (code.startsWith('SQLITE_IOERR') || code === 'EIO'))
    return { status: 500, problems: [problem('request.diskFailed', '')] }
  return { status: 500, problems: [problem('request.failed', '')] }
}

/** A problem as it is answered: with its sentence. */
export const withMessages = (problems: readonly Problem[]) =>
  problems.map(p => ({ code: p.code, field: p.field, message: problemText(en, p) }))
