import { useCallback, useState } from 'react'
import { Redirect, Route, Switch, useLocation } from 'wouter'
import { pageAt, pageNames, pages, workingPaperPage } from '../pages.ts'
import { SaidStrip } from '../parts/announcer.tsx'
import { Fetched } from '../parts/fetched.tsx'
import { Page } from '../parts/page.tsx'
import { useShop } from '../shop.tsx'
import { Broken } from './broken.tsx'
import { DoubtedClock } from './doubted-clock.tsx'
import { FindBox } from './find-box.tsx'
import { Help } from './help.tsx'
import { useKeys } from './keys.ts'
import { Light } from './light.tsx'
import { ThumbIndex } from './thumb-index.tsx'
import { Who } from './who.tsx'
import { WhoQuestion } from './who-question.tsx'

/** The open book: thumb index, find box, who is at the counter, and the page turned to. */
export function Book() {
  const { words } = useShop()
  const [helping, setHelping] = useState(false)
  const [asking, setAsking] = useState(false)
  const help = useCallback(() => setHelping(true), [])
  const who = useCallback(() => setAsking(true), [])
  useKeys({ help, who })
  const asked = () => setAsking(false)
  return (
    <div className="book">
      <a className="skip" href="#page">
        {words.screens.skipToPage}
      </a>
      <ThumbIndex />
      <div className="leaf">
        <header className="top">
          <FindBox />
          <div className="aside">
            <Who />
            <Light />
            <button type="button" className="plain" onClick={() => setHelping(true)}>
              {words.screens.keys.open}
            </button>
          </div>
        </header>
        <SaidStrip />
        <DoubtedClock />
        <Leaf />
      </div>
      {asking && <WhoQuestion onChosen={asked} onNo={asked} />}
      {helping && <Help onClose={() => setHelping(false)} />}
    </div>
  )
}

function Leaf() {
  const [path] = useLocation()
  const name = pageAt(path)
  return (
    <main id="page" className="main" tabIndex={-1} data-page={name}>
      <Broken key={name}>
        <Switch>
          <Route path="/">
            <Redirect to="/counter" replace />
          </Route>
          {pageNames.map(page => (
            <Route key={page} path={`/${page}/*?`}>
              <Fetched of={pages[page]} />
            </Route>
          ))}
          <Route path="/paper/*?">
            <Fetched of={workingPaperPage} />
          </Route>
          <Route>
            <NotThere />
          </Route>
        </Switch>
      </Broken>
    </main>
  )
}

function NotThere() {
  const { notThere } = useShop().words.screens
  return (
    <Page title={notThere.heading}>
      <p className="aside-words">{notThere.advice}</p>
    </Page>
  )
}
