import { spawnSync } from 'node:child_process'

/** What the command prints and how it ends. */
export interface Said {
  readonly status: number | null
  readonly stdout: string
  readonly stderr: string
}

/** Runs `calc NAME` as a program of its own, with a text on its standard input. */
export function calc(name: string, input: string): Said {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['electron/commands/calc.ts', name], {
    input,
    encoding: 'utf8',
  })
  return { status, stdout, stderr }
}

/** The answer to a good input. */
export function answer(name: string, input: unknown): unknown {
  const { status, stdout, stderr } = calc(name, JSON.stringify(input))
  if (status !== 0 || stderr !== '') throw new Error(`${name} ended with ${status}: ${stderr}`)
  return JSON.parse(stdout)
}

/** The problems with a bad input as `code field`, sorted; checks that nothing was printed and the status is 2. */
export function refused(name: string, json: string): string[] {
  const { status, stdout, stderr } = calc(name, json)
  if (status !== 2 || stdout !== '') throw new Error(`${name} ended with ${status} and printed ${stdout}`)
  const { problems } = JSON.parse(stderr) as { problems: { code: string; field: string; message: string }[] }
  for (const { code, message } of problems) if (message === code) throw new Error(`no sentence for ${code}`)
  return problems.map(({ code, field }) => `${code} ${field}`).sort()
}
