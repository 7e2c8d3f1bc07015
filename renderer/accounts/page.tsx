import './accounts.css'
import { Route, Switch } from 'wouter'
import { AccountLedger } from './account-ledger.tsx'
import { DayBook } from './day-book.tsx'
import { Drawer } from './drawer.tsx'
import { FiguresPage } from './figures.tsx'
import { Money } from './money.tsx'
import { Owed } from './owed.tsx'
import { OwnerAccount } from './owner-account.tsx'
import { PaperPage } from './paper-page.tsx'
import { PapersList } from './papers-list.tsx'
import { Periods } from './periods.tsx'
import { Tax } from './tax.tsx'

/** The Accounts: papers, what is owed, money received, each account, the drawer, tax by period, figures, closed periods, the day book. */
export default function Accounts() {
  return (
    <Switch>
      <Route path="/accounts" component={PapersList} />
      <Route path="/accounts/paper/:id/:act?">
        {({ id, act }) => <PaperPage key={id} id={id} act={act} />}
      </Route>
      <Route path="/accounts/owed" component={Owed} />
      <Route path="/accounts/owner/:id">{({ id }) => <OwnerAccount key={id} id={id} />}</Route>
      <Route path="/accounts/ledger" component={AccountLedger} />
      <Route path="/accounts/drawer" component={Drawer} />
      <Route path="/accounts/periods" component={Periods} />
      <Route path="/accounts/money" component={Money} />
      <Route path="/accounts/tax" component={Tax} />
      <Route path="/accounts/figures" component={FiguresPage} />
      <Route path="/accounts/day-book" component={DayBook} />
    </Switch>
  )
}
