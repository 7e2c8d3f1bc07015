import { Route, Switch } from 'wouter'
import { AddPart } from './add-part.tsx'
import { PartPage } from './part-page.tsx'
import { PartsList } from './parts-list.tsx'
import { SpringFinder } from './spring-finder.tsx'

/** The Stores: parts by kind, one part with its moves, a new part, the mainspring finder. */
export default function StoresPage() {
  return (
    <Switch>
      <Route path="/stores" component={PartsList} />
      <Route path="/stores/new" component={AddPart} />
      <Route path="/stores/springs" component={SpringFinder} />
      <Route path="/stores/:id">{({ id }) => <PartPage key={id} id={id} />}</Route>
    </Switch>
  )
}
