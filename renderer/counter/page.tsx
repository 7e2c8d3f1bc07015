import { Route, Switch } from 'wouter'
import { RepairView } from '../repair/repair-view.tsx'
import { CounterList } from './counter-list.tsx'
import { TakeIn } from './take-in.tsx'

/** The Counter: today's list, taking in, and one repair opened from it. */
export default function Counter() {
  return (
    <Switch>
      <Route path="/counter" component={CounterList} />
      <Route path="/counter/take-in" component={TakeIn} />
      <Route path="/counter/:number/:act?">
        {({ number, act }) => <RepairView key={number} number={number} act={act} base="/counter" />}
      </Route>
    </Switch>
  )
}
