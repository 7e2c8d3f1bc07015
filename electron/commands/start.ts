import { pathToFileURL } from 'node:url'
import { start } from '../../core/words/en/start.ts'
import { places } from '../places.ts'
import type * as Host from './serve.ts'
import { type ArgumentProblem, type StartChoice, startChoice } from './start/arguments.ts'
import { build, needsBuild } from './start/build.ts'
import { electronBinary, fetchElectron, fetchSeconds, hasDisplay } from './start/electron-binary.ts'
import { openWindow } from './start/open-window.ts'

const say = (sentence: string) => console.error(sentence)

/** Every problem of the arguments at once. */
function tellProblems(problems: readonly ArgumentProblem[]): number {
  for (const { code, field } of problems) say(start.arguments[code]({ given: field }))
  say(start.usage)
  return 2
}

/** Electron's program where a window can be shown, fetched first where it is missing. */
async function windowBinary(): Promise<string | undefined> {
  if (!hasDisplay()) return undefined
  const found = electronBinary()
  if (found) return found
  say(start.fetching({ seconds: fetchSeconds }))
  const fetched = await fetchElectron()
  if (!fetched) say(start.notFetched)
  return fetched
}

/** True when a person wants to see a window: nobody asked for a port or for nothing to be opened. */
const wantsWindow = (choice: StartChoice) => choice.open && choice.port === undefined

/** Opens the ledger in the desktop window; the exit code, or nothing when there is no window to be had. */
async function inWindow(choice: StartChoice): Promise<number | undefined> {
  const binary = wantsWindow(choice) ? await windowBinary() : undefined
  if (!binary) return undefined
  const code = await openWindow(binary, choice)
  if (code === undefined) say(start.windowFailed)
  return code
}

/** The loopback host as it was built: the same program that is packaged. */
const builtHost = () => import(pathToFileURL(places.host).href) as Promise<typeof Host>

async function run(args: readonly string[]): Promise<number> {
  const checked = startChoice(args, process.env.INIT_CWD ?? process.cwd())
  if (!checked.ok) return tellProblems(checked.problems)
  const choice = checked.value
  if (choice.help) {
    console.log(start.usage)
    return 0
  }
  if (needsBuild()) {
    say(start.building)
    if (!(await build())) {
      say(start.buildFailed)
      return 1
    }
  }
  return (await inWindow(choice)) ?? (await builtHost()).serveCommand(choice)
}

process.exit(await run(process.argv.slice(2)))
