import { useQuery } from '@tanstack/react-query'
import { answer } from '../api.ts'
import { ActButton, useAct } from '../parts/act.tsx'
import { Announcer, SaidStrip } from '../parts/announcer.tsx'
import { CountWheel } from '../parts/count-wheel.tsx'
import { useWords } from '../words.ts'
import { type NotOpen, restoreApi } from './api.ts'
import { RestoreCopies } from './copies.tsx'

const written = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' })
const shown = (instant: string) => (instant ? written.format(new Date(instant)) : '–')

/** The one page of a ledger that cannot be opened as it stands: why, and what can be done. */
export default function Opening() {
  return (
    <Announcer>
      <main className="frontispiece">
        <CountWheel passed={0} />
        <SaidStrip />
        <Decide />
      </main>
    </Announcer>
  )
}

function Decide() {
  const { restore, screens } = useWords()
  const { data } = useQuery({ queryKey: ['restore'], queryFn: () => answer(restoreApi.index.$get()) })
  if (!data) return <p>{screens.opening}</p>
  return (
    <>
      <h1>{restore.needsDecision}</h1>
      {data.notOpen && <p role="alert">{data.notOpen.message}</p>}
      <RestoreCopies shown={shown} />
      {data.notOpen && <OtherWays notOpen={data.notOpen} />}
    </>
  )
}

const begin = { after: () => location.assign('/'), said: () => '' }

/** Going on without what is missing, where that can be, and beginning a new shop. */
function OtherWays({ notOpen }: { notOpen: NotOpen }) {
  const { restore } = useWords()
  const goOn = useAct((json: Record<string, never>) => answer(restoreApi.goOn.$post({ json })), begin)
  const beginNew = useAct((json: Record<string, never>) => answer(restoreApi.beginNew.$post({ json })), begin)
  return (
    <section className="restore other-ways">
      {notOpen.mayGoOn && (
        <>
          <h2>{restore.goOn}</h2>
          <p className="quiet">{restore.goOnWhy}</p>
          <ActButton act={goOn} input={{}} look="second">
            {restore.goOn}
          </ActButton>
        </>
      )}
      <h2>{restore.beginNew}</h2>
      <p className="quiet">{restore.beginNewWhy}</p>
      <ActButton act={beginNew} input={{}} look="second">
        {restore.beginNew}
      </ActButton>
    </section>
  )
}
