const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const

const glanceMs = 250

/**
 * npm runs its scripts inside a shell and hands a signal to that shell only, which dies of it and leaves this
 * program behind: being left behind is therefore a request to end as well.
 */
function whenLeftBehind(act: () => void): void {
  const parent = process.ppid
  const watch = setInterval(() => {
    if (process.ppid === parent) return
    clearInterval(watch)
    act()
  }, glanceMs)
  watch.unref()
}

/** Calls `act` when the person or the system asks this program to end, each time that happens. */
export function whenAskedToEnd(act: (signal: NodeJS.Signals) => void): void {
  for (const signal of signals) process.on(signal, act)
  if (process.env.npm_lifecycle_event) whenLeftBehind(() => act('SIGTERM'))
}
