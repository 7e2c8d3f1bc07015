import { civilDateOf } from '../../core/calendar/zone.ts'
import { shelfClock } from '../../core/run-in/shelf-clock.ts'
import type { Heard, SoundSheet as Sheet } from '../../core/run-in/sound-sheet.ts'
import { useShop } from '../shop.tsx'
import type { RunView } from './shelf.ts'

const twelve = Array.from({ length: 12 }, (_, i) => i + 1)

/** What the clock sounds, each heard right or wrong with its day, or not heard yet. */
export function SoundSheet({ view }: { view: RunView }) {
  const { soundSheet: said } = useShop().words
  const { sheet } = view.run.figures
  const clock = shelfClock(view.clock)
  const strikes = clock.strike !== 'none'
  if (!strikes && clock.chime === false) return null
  return (
    <section className="sound-sheet" aria-label={said.heading}>
      <h3>{said.heading}</h3>
      {strikes && <Row name={said.hours} of={sheet.hours} which={twelve} />}
      {(clock.chime || clock.strike === 'ting-tang') && (
        <Row name={said.quarters} of={sheet.quarters} which={[1, 2, 3, 4]} />
      )}
      <Others sheet={sheet} corrects={Boolean(clock.chime) && clock.chimeCorrects} />
    </section>
  )
}

function Row(props: { name: string; of: Readonly<Record<number, Heard>>; which: readonly number[] }) {
  return (
    <div className="sounds">
      <span>{props.name}</span>
      <ol>
        {props.which.map(one => (
          <Sound key={one} name={String(one)} heard={props.of[one] ?? null} />
        ))}
      </ol>
    </div>
  )
}

function Others({ sheet, corrects }: { sheet: Sheet; corrects: boolean }) {
  const { soundSheet: said } = useShop().words
  const others = [
    [said.half, sheet.half, sheet.half !== null],
    [said.selfCorrected, sheet.selfCorrected, corrects],
    [said.silent, sheet.silent, sheet.silent !== null],
    [said.repeats, sheet.repeats, sheet.repeats !== null],
  ] as const
  const shown = others.filter(([, , asked]) => asked)
  if (shown.length === 0) return null
  return (
    <div className="sounds">
      <ol>
        {shown.map(([name, heard]) => (
          <Sound key={name} name={name} heard={heard} />
        ))}
      </ol>
    </div>
  )
}

function Sound({ name, heard }: { name: string; heard: Heard | null }) {
  const { words, formats, settings } = useShop()
  const said = words.soundSheet
  const date = heard && formats.shortDate(civilDateOf(heard.at, settings.place.timeZone))
  const state = heard === null ? 'unheard' : heard.right ? 'right' : 'wrong'
  const told = heard === null ? said.notHeard : said.on(heard.right ? said.right : said.wrong, date ?? '')
  return (
    <li className={state} title={said.of(name, told)}>
      <b>{name}</b>
      <small>
        <span aria-hidden="true">{heard === null ? '–' : heard.right ? `✓ ${date}` : `✗ ${date}`}</span>
        <span className="hidden-words">{told}</span>
      </small>
    </li>
  )
}
