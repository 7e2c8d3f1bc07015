import { Hands } from '../face.tsx'
import { Contour, Lines, Mirrored, mid, Oval, Pendulum, Round, Screw, slab, spokes, Wheel } from '../kit.tsx'

const Dome = () => (
  <>
    <Lines d="M50 270V96A70 76 0 0 1 190 96V270" />
    <Lines d="M60 244V102Q61 66 84 48M180 124V236" />
  </>
)

const Base = () => (
  <>
    <Mirrored>
      <Round at={[62, 304]} r={6} main />
    </Mirrored>
    <Contour d="M42 284V292Q44 302 120 302T198 292V284Z" />
    <Oval at={[mid, 282]} rx={78} ry={11} />
    <Contour d={slab(56, 262, 276)} />
    <Lines d={`M${mid - 53} 269H${mid + 53}`} />
  </>
)

/** One plate, pierced: a gothic frame of scrolls. */
const Plate = () => (
  <Mirrored>
    <Contour d="M120 42Q112 52 108 62Q84 70 80 100Q78 122 88 138Q70 150 66 176Q62 204 74 220Q66 232 66 262H80Q80 240 90 232H120V224H92Q74 212 76 184Q78 158 100 146H120V138H100Q88 124 90 104Q94 78 114 72Q118 64 120 60Z" />
    <Lines d="M80 176q8 -10 14 -4q2 8 -6 8M92 222q-6 -8 0 -13q8 0 5 7M97 130q6 4 12 2" />
  </Mirrored>
)

const Train = () => (
  <>
    <Wheel at={[mid, 190]} r={32} teeth={48} arms={6} />
    <Wheel at={[mid, 148]} r={17} teeth={30} arms={5} />
  </>
)

/** Pierced plates under a dome, with every wheel to be seen. */
export const SkeletonFront = () => (
  <>
    <Base />
    <Pendulum top={150} bob={244} r={11} />
    <Train />
    <Plate />
    <Round at={[mid, 104]} r={34} main />
    <Round at={[mid, 104]} r={23} />
    <Lines d={spokes([mid, 104], 25, 32, 12)} />
    <Wheel at={[mid, 104]} r={15} teeth={28} />
    <Hands at={[mid, 104]} r={34} />
    <Mirrored>
      <Screw at={[73, 240]} r={3} />
    </Mirrored>
    <Screw at={[mid, 228]} r={3} />
    <Dome />
  </>
)

/** From behind: fusee and barrel, the back cock and the pendulum before all. */
export const SkeletonBack = () => (
  <>
    <Base />
    <Train />
    <Plate />
    <Round at={[mid, 190]} r={22} main />
    <Lines
      d={`M${mid - 16} 178H${mid + 16}M${mid - 20} 184H${mid + 20}M${mid - 22} 191H${mid + 22}M${mid - 20} 198H${mid + 20}`}
    />
    <Wheel at={[mid, 104]} r={26} teeth={40} arms={5} />
    <Contour d={`M${mid - 14} 62H${mid + 14}V74H${mid - 14}Z`} />
    <Screw at={[mid - 9, 68]} r={2.6} />
    <Screw at={[mid + 9, 68]} r={2.6} />
    <Pendulum top={72} bob={244} r={13} />
    <Mirrored>
      <Screw at={[73, 240]} r={3} />
    </Mirrored>
    <Dome />
  </>
)
