/** Every bench by name, loaded only when it is run. */
const benches: Readonly<Record<string, () => Promise<() => Promise<object>>>> = {
  core: async () => (await import('./core.ts')).core,
  papers: async () => (await import('./papers.ts')).papers,
  chart: async () => (await import('./chart.ts')).chart,
  browser: async () => (await import('./browser.ts')).browser,
  import: async () => (await import('./import.ts')).importing,
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

const results: Record<string, object> = {}
for (const [name, load] of Object.entries(benches))
  if (asked.length === 0 || asked.includes(name)) results[name] = await (await load())()
process.stdout.write(`${JSON.stringify(results, null, 2)}\n`)
