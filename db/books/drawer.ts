import { gather } from '../../core/checked.ts'
import { minor, minorText } from '../../core/money/minor.ts'
import { drawerExpected } from '../rows/drawer.ts'
import { refuse } from '../rows/refusal.ts'
import { readSettings } from '../rows/settings.ts'
import { verb } from '../rows/verb.ts'
import { bookDay } from '../rules/book-day.ts'
import { accepted, amountIn } from '../rules/checked-in.ts'
import { drawerCounts } from '../schema/index.ts'

/** What lies in the drawer. */
export interface DrawerCount {
  /** In major units. */
  readonly counted: string
  /** What is taken out after it was counted, as to the bank; in major units. */
  readonly taken: string
  /** Needed where the count differs from the entries. */
  readonly remark: string
}

/** Counts the cash drawer against the entries since the last count; what differs is recorded with its remark. */
export const countDrawer = verb('accounts.countDrawer', (tx, input: DrawerCount, doing) => {
  const settings = readSettings(tx)
  const onDate = bookDay(tx, settings, doing)
  const { counted, taken } = accepted(
    gather({
      counted: amountIn(settings, input.counted, 'counted'),
      taken: amountIn(settings, input.taken, 'taken'),
    }),
  )
  const { expectedMinor, lastPaymentId } = drawerExpected(tx)
  const [countedMinor, takenMinor] = [counted ?? minor(0), taken ?? minor(0)]
  const differenceMinor = minor(countedMinor - expectedMinor)
  const text = (amount: typeof countedMinor) => minorText(amount, settings.place.currency)
  if (takenMinor > countedMinor) refuse('drawer.takenMore', 'taken', { counted: text(countedMinor) })
  if (differenceMinor !== 0 && !input.remark)
    refuse('drawer.remark', 'remark', { expected: text(expectedMinor), difference: text(differenceMinor) })
  const { id } = tx
    .insert(drawerCounts)
    .values({
      at: doing.at,
      onDate,
      personId: doing.personId,
      lastPaymentId,
      expectedMinor,
      countedMinor,
      takenMinor,
      remark: input.remark,
    })
    .returning()
    .get()
  return { subject: { kind: 'drawer-count', id }, result: { id, expectedMinor, differenceMinor } }
})
