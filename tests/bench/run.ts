/** Every bench by name, loaded only when it is run. */
const benches: Readonly<Record<string, () => Promise<() => Promise<object>>>> = {
  core: async () => (await import('./core.ts')).core,
  shelf: async () => (await import('./shelf.ts')).shelf,
  papers: async () => (await import('./papers.ts')).papers,
  chart: async () => (await import('./chart.ts')).chart,
  browser: async () => (await import('./browser.ts')).browser,
  import: async () => (await import('./import.ts')).importing,
  backup: async () => (await import('./backup.ts')).backup,
  ledger: async () => (await import('./ledger.ts')).ledger,
}

const asked = process.argv.slice(2)
const unknown = asked.filter(name => !Object.hasOwn(benches, name))
if (unknown.length > 0) {
  process.stderr.write(
    `No bench called ${unknown.join(', ')}. There are: ${Object.keys(benches).join(', ')}.\n`,
  )
  process.exit(2)
}

/** The longest that one bench may take, in minutes: the largest of them builds a ledger of twenty years. */
const limitMinutes = 20

/** What a bench found, or why it did not; it never holds up the others. */
async function measured(name: string): Promise<object> {
  const limit = new Promise<never>((_, fail) => {
    setTimeout(() => fail(new Error(`took more than ${limitMinutes} minutes`)), limitMinutes * 60_000).unref()
  })
  process.stderr.write(`bench ${name} …\n`)
  try {
    const bench = await benches[name]?.()
    return (await Promise.race([bench?.() ?? {}, limit])) ?? {}
  } catch (error) {
    process.exitCode = 1
    return { failed: error instanceof Error ? error.message : String(error) }
  }
}

const results: Record<string, object> = {}
for (const name of Object.keys(benches))
  if (asked.length === 0 || asked.includes(name)) results[name] = await measured(name)
process.stdout.write(`${JSON.stringify(results, null, 2)}\n`)
// What a bench that failed has left running is not waited for.
process.exit()
