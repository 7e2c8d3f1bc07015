import './shop.css'
import type { ComponentType } from 'react'
import { Link, Route, Switch } from 'wouter'
import type { Reserved as ReservedAct } from '../../core/people/may.ts'
import type { Words } from '../../core/words/en/index.ts'
import { Page } from '../parts/page.tsx'
import { Reserved } from '../parts/reserved.tsx'
import { useShop } from '../shop.tsx'
import { Backups } from './backups.tsx'
import { ClosedDays } from './closed-days.tsx'
import { EInvoice } from './e-invoice.tsx'
import { Estimates } from './estimates.tsx'
import { Hours } from './hours.tsx'
import { Limits } from './limits.tsx'
import { NameAndPapers } from './name-and-papers.tsx'
import { People } from './people.tsx'
import { Place } from './place.tsx'
import { Places } from './places.tsx'
import { Prices } from './prices.tsx'
import { Privacy } from './privacy.tsx'
import { RunIn } from './run-in.tsx'
import { Tax } from './tax.tsx'
import { Uncollected } from './uncollected.tsx'
import { Warranty } from './warranty.tsx'

type Group = keyof Words['shop']['groups']

/** The groups of the page in the order of its contents. */
const groups: Readonly<Record<Group, ComponentType>> = {
  name: NameAndPapers,
  place: Place,
  hours: Hours,
  closed: ClosedDays,
  prices: Prices,
  tax: Tax,
  'e-invoice': EInvoice,
  estimates: Estimates,
  warranty: Warranty,
  'run-in': RunIn,
  limits: Limits,
  uncollected: Uncollected,
  places: Places,
  people: People,
  privacy: Privacy,
  backups: Backups,
}

/** What whoever changes a group does; of the one that is left out everybody may do something. */
const reservedOf: Readonly<Partial<Record<Group, ReservedAct>>> = {
  name: 'shop.changeSettings',
  place: 'shop.changeSettings',
  hours: 'shop.changeSettings',
  closed: 'shop.closeOn',
  prices: 'shop.changeSettings',
  tax: 'shop.changeSettings',
  'e-invoice': 'shop.changeSettings',
  estimates: 'shop.changeSettings',
  warranty: 'shop.changeSettings',
  'run-in': 'shop.changeSettings',
  limits: 'shop.changeSettings',
  uncollected: 'shop.changeSettings',
  places: 'shop.addPlace',
  people: 'shop.changePerson',
  privacy: 'shop.changeSettings',
}

const isGroup = (name: string): name is Group => Object.hasOwn(groups, name)

/** The Shop: its contents in the margin, one group of settings open at a time. */
export default function ShopPage() {
  return (
    <Switch>
      <Route path="/shop/:group?">
        {({ group = 'name' }) => <OpenGroup group={isGroup(group) ? group : 'name'} />}
      </Route>
    </Switch>
  )
}

function OpenGroup({ group }: { group: Group }) {
  const { words } = useShop()
  const Shown = groups[group]
  return (
    <Page title={words.shop.groups[group]} subtitle={words.screens.pages.shop}>
      <div className="shop-leaf">
        <Contents open={group} />
        <div className="shop-group">
          <Reserved act={reservedOf[group]}>
            <Shown key={group} />
          </Reserved>
        </div>
      </div>
    </Page>
  )
}

function Contents({ open }: { open: Group }) {
  const { shop } = useShop().words
  return (
    <nav className="shop-contents" aria-label={shop.contents}>
      <ul>
        {(Object.keys(groups) as Group[]).map(group => (
          <li key={group}>
            <Link href={`/shop/${group}`} aria-current={group === open ? 'page' : undefined}>
              {shop.groups[group]}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  )
}
