import { readFileSync } from 'node:fs'
import { bad, type Checked, problem } from '../../core/problems.ts'
import { sentences } from '../../core/words/en/sentences.ts'
import { problemText } from '../../core/words/problem-text.ts'
import { calculations } from './calc/index.ts'

/** The answer of the calculation to a JSON text. */
async function answerTo(name: string, json: string): Promise<Checked<unknown>> {
  const load = Object.hasOwn(calculations, name) ? calculations[name] : undefined
  if (!load)
    return bad([problem('calc.unknownName', '', { name, choices: Object.keys(calculations).join(', ') })])
  const raw = parsed(json)
  if (!raw.ok) return raw
  return (await load()).default.calculate(raw.value)
}

function parsed(json: string): Checked<unknown> {
  try {
    return { ok: true, value: JSON.parse(json) }
  } catch {
    return bad([problem('shape.notJson', '')])
  }
}

const name = process.argv[2] ?? ''
const answer = await answerTo(name, Object.hasOwn(calculations, name) ? readFileSync(0, 'utf8') : '')
if (answer.ok) process.stdout.write(`${JSON.stringify(answer.value)}\n`)
else {
  const problems = answer.problems.map(one => ({
    code: one.code,
    field: one.field,
    message: problemText({ problems: sentences }, one),
  }))
  process.stderr.write(`${JSON.stringify({ problems })}\n`)
  process.exitCode = 2
}
