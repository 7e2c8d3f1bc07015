import { resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { en } from '../../core/words/en/index.ts'
import { openUntouched } from '../../db/file/untouched.ts'
import { Refusal } from '../../db/rows/refusal.ts'
import { type CopyLook, copiesOf, lookAtCopy, restore } from '../copies/restore.ts'
import { finishChange } from '../copies/set-aside.ts'
import { places } from '../places.ts'
import { withMessages } from '../server/problems.ts'
import { refuseHeld } from '../shop/hold.ts'
import { openingRefused } from '../shop/opening-refused.ts'
import { outside } from '../shop/outside.ts'

const say = en.restore
const options = { migrations: places.migrations, ...outside }

interface Choice {
  readonly ledger: string
  readonly from: string | undefined
  readonly look: boolean
  readonly otherLedger: boolean
}

function end(code: 0 | 1 | 2, lines: readonly string[]): never {
  for (const line of lines) (code === 0 ? console.log : console.error)(line)
  process.exit(code)
}

function choice(args: string[]): Choice {
  const [text, tick] = [{ type: 'string' } as const, { type: 'boolean' } as const]
  try {
    const { values } = parseArgs({
      args,
      options: { ledger: text, from: text, look: tick, 'other-ledger': tick },
    })
    if (!values.ledger || (values.look && !values.from)) return end(2, [say.usage])
    const from = values.from && resolve(values.from)
    const otherLedger = values['other-ledger'] ?? false
    return { ledger: resolve(values.ledger), from, look: values.look ?? false, otherLedger }
  } catch {
    return end(2, [say.usage])
  }
}

/** What stands in a copy and what would be missing, a line each. */
function lookLines({ path, refused, contents, otherLedger, missing, filesMissing }: CopyLook): string[] {
  if (refused || !contents) return [path, `  ${say.cannot(refused)}`]
  return [
    path,
    `  ${say.last}: ${contents.tail.at || '–'}: ${say.lastAct(contents.lastAct)}`,
    `  ${say.holds}: ${say.contents({ ...contents, entries: contents.tail.count })}`,
    `  ${say.missing}: ${missing ? say.missingEntries(missing) : say.nothing}`,
    ...(filesMissing > 0 ? [`  ${say.filesMissing(filesMissing)}`] : []),
    ...(otherLedger ? [`  ${say.otherLedger}`] : []),
  ]
}

/** Gives the place to the copy and opens what stands there then, as every start will. */
function bringBack({ ledger, otherLedger }: Choice, path: string): string[] {
  const folder = restore(ledger, { path, otherLedger }, options)
  openUntouched(ledger, options).close()
  return [say.done({ folder })]
}

function told(error: unknown, file: string): string[] {
  if (error instanceof Refusal) return withMessages(error.problems).map(({ message }) => message)
  return [openingRefused(error, { file })]
}

process.umask(0o077)

/** `npm run restore`: lists the copies of a ledger that no program has open, looks at one, or brings it back. */
async function main(): Promise<void> {
  const asked = choice(process.argv.slice(2))
  try {
    await refuseHeld(asked.ledger)
    finishChange(asked.ledger)
    if (asked.from && !asked.look) return end(0, bringBack(asked, asked.from))
    const paths = asked.from ? [asked.from] : copiesOf(asked.ledger)
    end(
      0,
      paths.length > 0 ? paths.flatMap(path => lookLines(lookAtCopy(asked.ledger, path))) : [say.noCopies],
    )
  } catch (error) {
    end(1, told(error, asked.ledger))
  }
}

await main()
