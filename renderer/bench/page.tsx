import { Route, Switch } from 'wouter'
import './bench.css'
import { BenchCard } from './card.tsx'
import { Queue } from './queue.tsx'
import { TurnOfTheDay } from './today.tsx'

/** The Bench: the queue in order, and the card of the repair that lies open. */
export default function BenchPage() {
  return (
    <Switch>
      <Route path="/bench" component={Queue} />
      <Route path="/bench/today" component={TurnOfTheDay} />
      <Route path="/bench/:number">{({ number }) => <BenchCard key={number} number={number} />}</Route>
    </Switch>
  )
}
