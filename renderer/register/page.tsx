import './register.css'
import { Route, Switch } from 'wouter'
import { code } from '../parts/code.ts'
import { Fetched } from '../parts/fetched.tsx'
import { ClockPage } from './clock-page.tsx'
import { NewOwner } from './owner-form.tsx'
import { OwnerPage } from './owner-page.tsx'
import { OwnersList } from './owners-list.tsx'

// A list is entered once in a shop's life: what it needs is fetched then.
const importing = code('import', () => import('./import/page.tsx'))

/** The Register: owners by name, one owner, one clock with its whole history. */
export default function Register() {
  return (
    <Switch>
      <Route path="/register" component={OwnersList} />
      <Route path="/register/import">
        <Fetched of={importing} />
      </Route>
      <Route path="/register/new-owner" component={NewOwner} />
      <Route path="/register/owner/:id/:act?">
        {({ id, act }) => <OwnerPage key={id} id={id} act={act} />}
      </Route>
      <Route path="/register/clock/:id/:act?">
        {({ id, act }) => <ClockPage key={id} id={id} act={act} />}
      </Route>
    </Switch>
  )
}
