import { existsSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { verify as say } from '../../core/words/en/verify.ts'
import { namesake } from '../../db/file/copy-name.ts'
import { LedgerRefused } from '../../db/file/ledger-refused.ts'
import { openUntouched } from '../../db/file/untouched.ts'
import { type Fault, fault } from '../../db/verify/check.ts'
import { type Checked, verified } from '../../db/verify/index.ts'
import { places } from '../places.ts'
import { refuseHeld } from '../shop/hold.ts'
import { openingRefused } from '../shop/opening-refused.ts'
import { outside } from '../shop/outside.ts'

interface Choice {
  readonly file: string
  readonly json: boolean
}

function end(code: 0 | 1 | 2, lines: readonly string[]): never {
  for (const line of lines) (code === 2 ? console.error : console.log)(line)
  process.exit(code)
}

/** What the command is asked; says what is wrong with it and ends with 2. */
function choice(args: string[]): Choice {
  const options = { ledger: { type: 'string' }, json: { type: 'boolean' } } as const
  try {
    const { values } = parseArgs({ args, options })
    if (!values.ledger) return end(2, [say.ledgerNeeded, say.usage])
    return { file: resolve(values.ledger), json: values.json ?? false }
  } catch {
    return end(2, [say.usage])
  }
}

const sentence = ({ code, values }: Fault): string => say.faults[code](values)

const damaged: Checked = { name: 'file', looked: 0, faults: [fault('file.unopenable')], notes: [] }

/** Every check on the ledger, or the one fault that it cannot be opened; what is not damage is thrown. */
function checksOf(file: string): Checked[] {
  const { migrations } = places
  try {
    const ledger = openUntouched(file, { migrations, ...outside })
    try {
      return [
        ...verified({
          read: ledger.read,
          missing: ledger.missing,
          file: namesake(file),
          path: file,
          migrations,
        }),
      ]
    } finally {
      ledger.close()
    }
  } catch (error) {
    if (error instanceof LedgerRefused && error.code === 'ledger.damaged') return [damaged]
    throw error
  }
}

function told({ name, looked, faults, notes }: Checked): string[] {
  const head = say.checks[name](looked)
  const lines = [...faults, ...notes].map(one => `  ${sentence(one)}`)
  return [faults.length === 0 ? `${head}, ${say.good}` : `${head}:`, ...lines]
}

const asJson = (file: string, checks: readonly Checked[]): string =>
  JSON.stringify({
    ledger: file,
    sound: checks.every(({ faults }) => faults.length === 0),
    checks: checks.map(({ name, looked, faults, notes }) => ({
      name,
      looked,
      faults: faults.map(one => ({ ...one, message: sentence(one) })),
      notes: notes.map(one => ({ ...one, message: sentence(one) })),
    })),
  })

/** `npm run verify -- --ledger FILE [--json]`: looks through a ledger that no program has open, and leaves it as it is. */
async function main(): Promise<void> {
  const { file, json } = choice(process.argv.slice(2))
  if (!existsSync(file)) end(2, [say.noFile({ file })])
  try {
    await refuseHeld(file)
    const checks = checksOf(file)
    const count = checks.reduce((sum, { faults }) => sum + faults.length, 0)
    const last = count === 0 ? say.sound({ file }) : say.unsound({ file, faults: count })
    end(count === 0 ? 0 : 1, json ? [asJson(file, checks)] : [...checks.flatMap(told), last])
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOSPC') end(2, [say.noRoom({ folder: tmpdir() })])
    end(2, [openingRefused(error, { file })])
  }
}

await main()
