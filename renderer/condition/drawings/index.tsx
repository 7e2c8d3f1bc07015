import { type ComponentType, memo } from 'react'
import type { Form } from '../../../core/vocabulary/clock.ts'
import type { View } from '../../../core/vocabulary/intake.ts'
import { MoonDial, SilentDial } from './dials/arched.tsx'
import { CarriageDial } from './dials/carriage.tsx'
import { CuckooDial } from './dials/cuckoo.tsx'
import { LanternDial } from './dials/lantern.tsx'
import { FigureDial, RoundDial, TorsionDial } from './dials/round.tsx'
import { SkeletonDial } from './dials/skeleton.tsx'
import { BracketBack, BracketFront } from './forms/bracket.tsx'
import { CarriageBack, CarriageFront } from './forms/carriage.tsx'
import { CuckooBack, CuckooFront } from './forms/cuckoo.tsx'
import { LanternBack, LanternFront } from './forms/lantern.tsx'
import { LongcaseBack, LongcaseFront } from './forms/longcase.tsx'
import { MantelBack, MantelFront } from './forms/mantel.tsx'
import { NoveltyBack, NoveltyFront } from './forms/novelty.tsx'
import { OtherBack, OtherFront } from './forms/other.tsx'
import { ShipBack, ShipFront } from './forms/ship.tsx'
import { SkeletonBack, SkeletonFront } from './forms/skeleton.tsx'
import { TorsionBack, TorsionFront } from './forms/torsion.tsx'
import { WallBack, WallFront } from './forms/wall.tsx'
import { sheet } from './kit.tsx'
import { CuckooMovement } from './movements/cuckoo.tsx'
import { FuseeMovement } from './movements/fusee.tsx'
import { PlatedMovement, WeightMovement } from './movements/plated.tsx'
import { PostedMovement } from './movements/posted.tsx'
import { PlatformMovement, RoundMovement, TorsionMovement } from './movements/small.tsx'

type Drawings = Record<View, ComponentType>

/** What every form of clock looks like, from memory of the trade's usual types, drawn for this ledger. */
const drawings: Record<Form, Drawings> = {
  longcase: { front: LongcaseFront, back: LongcaseBack, dial: MoonDial, movement: WeightMovement },
  bracket: { front: BracketFront, back: BracketBack, dial: SilentDial, movement: PlatedMovement },
  mantel: { front: MantelFront, back: MantelBack, dial: RoundDial, movement: PlatedMovement },
  wall: { front: WallFront, back: WallBack, dial: RoundDial, movement: PlatedMovement },
  cuckoo: { front: CuckooFront, back: CuckooBack, dial: CuckooDial, movement: CuckooMovement },
  carriage: { front: CarriageFront, back: CarriageBack, dial: CarriageDial, movement: PlatformMovement },
  torsion: { front: TorsionFront, back: TorsionBack, dial: TorsionDial, movement: TorsionMovement },
  lantern: { front: LanternFront, back: LanternBack, dial: LanternDial, movement: PostedMovement },
  skeleton: { front: SkeletonFront, back: SkeletonBack, dial: SkeletonDial, movement: FuseeMovement },
  ship: { front: ShipFront, back: ShipBack, dial: FigureDial, movement: RoundMovement },
  novelty: { front: NoveltyFront, back: NoveltyBack, dial: FigureDial, movement: PlatedMovement },
  other: { front: OtherFront, back: OtherBack, dial: RoundDial, movement: PlatedMovement },
}

/** The outline drawing of a form of clock from one side, in the ink of the page. It says nothing aloud: its frame names it. */
export const Drawing = memo(({ form, view }: { form: Form; view: View }) => {
  const Shape = drawings[form][view]
  return (
    <svg
      className="drawing"
      viewBox={`0 0 ${sheet.width} ${sheet.height}`}
      aria-hidden="true"
      focusable="false"
    >
      <g fill="none" stroke="currentColor" strokeWidth={1.5} strokeLinecap="round" strokeLinejoin="round">
        <Shape />
      </g>
    </svg>
  )
})
