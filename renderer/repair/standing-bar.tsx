import { Link } from 'wouter'
import { isToCollect } from '../../core/standing/stages.ts'
import { problemText } from '../../core/words/problem-text.ts'
import { Cautions } from '../parts/cautions.tsx'
import { Section } from '../parts/page.tsx'
import { More } from '../parts/pane.tsx'
import { Standing } from '../parts/standing.tsx'
import { useShop } from '../shop.tsx'
import { actWords, openActs, placeOfAct } from './act-names.ts'
import type { Repair } from './repair.ts'

interface BarProps {
  readonly view: Repair
  readonly base: string
  /** The act whose form is open. */
  readonly doing: string | undefined
}

/** Where the repair stands in words, its plain next act, and the others behind a quiet word. */
export function StandingBar({ view, base, doing }: BarProps) {
  const { words, formats } = useShop()
  const { repair } = words
  const { number, stageSince, toldAt } = view.repair
  const [next, ...more] = openActs(view)
  const toTell = isToTell(view)
  const others = more.filter(act => act !== 'tell-owner' || !toTell)
  return (
    <Section title={repair.standing}>
      <div className="standing-bar">
        <p className="standing-now">
          <Standing {...view.standing} />
          <small className="quiet">{repair.since(formats.instant(stageSince))}</small>
          {toldAt && <small className="quiet">{repair.told(formats.instant(toldAt))}</small>}
        </p>
        {next && doing === undefined && (
          <Link className="button" href={placeOfAct(next, base, number)}>
            {actWords(words, next)}
          </Link>
        )}
        {toTell && doing === undefined && (
          <Link className="button second" href={placeOfAct('tell-owner', base, number)}>
            {actWords(words, 'tell-owner')}
          </Link>
        )}
      </div>
      {doing === undefined && (
        <More label={repair.otherActs}>
          <ul className="other-acts">
            {others.map(act => (
              <li key={act}>
                <Link className="button second" href={placeOfAct(act, base, number)}>
                  {actWords(words, act)}
                </Link>
              </li>
            ))}
          </ul>
          <Blocked view={view} />
        </More>
      )}
      {view.uncollected && <LongUncollected />}
      <Cautions codes={view.cautions.map(({ code }) => code)} />
    </Section>
  )
}

/** The clock may be collected, and nobody has told its owner since. */
const isToTell = ({ repair, standing: { stage } }: Repair): boolean =>
  isToCollect(stage) && (repair.toldAt === null || repair.toldAt < repair.stageSince)

/** That a clock has stood ready longer than the shop's period, and that local law says what may be done. */
function LongUncollected() {
  const { repair, shop } = useShop().words
  return (
    <aside className="note" aria-label={repair.uncollected}>
      <p>
        <b>{repair.uncollected}</b> {shop.uncollected.law}
      </p>
      <p className="defer">{shop.uncollected.lawAdvice}</p>
    </aside>
  )
}

/** The acts that are not open, each with what stands in its way. */
function Blocked({ view }: { view: Repair }) {
  const { words } = useShop()
  return (
    <dl className="facts quiet">
      {view.standing.blocked.map(({ act, code }) => (
        <div key={act} className="fact">
          <dt>{actWords(words, act)}</dt>
          <dd>{problemText(words, { code, field: '' })}</dd>
        </div>
      ))}
    </dl>
  )
}
