/** A clock on the round, in walking order. */
export interface RoundClock {
  readonly number: number
  readonly due: { readonly reading: boolean; readonly wind: boolean }
}

const isDue = ({ due }: RoundClock): boolean => due.reading || due.wind

/** The clock to go to after the one with `number`: the next due one in walking order, from the beginning again after the end; null when none is left. */
export function nextOnRound(round: readonly RoundClock[], number: number | null): number | null {
  const at = round.findIndex(clock => clock.number === number)
  const ahead = [...round.slice(at + 1), ...round.slice(0, Math.max(at, 0))]
  return ahead.find(isDue)?.number ?? null
}
