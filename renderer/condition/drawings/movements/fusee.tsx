import { box, Contour, Lines, Pendulum, Round } from '../kit.tsx'

/** A wheel seen on its edge, on its arbor. */
const OnEdge = ({ x, y, r }: { x: number; y: number; r: number }) => (
  <>
    <Contour d={box(x - 3, y - r, x + 3, y + r)} />
    <Lines
      d={Array.from({ length: Math.floor(r / 2) }, (_, i) => `M${x - 3} ${y - r + 2 + i * 4}h6`).join('')}
    />
  </>
)

/** A train's arbor between the plates, with its pinion. */
const Arbor = ({ y, pinion }: { y: number; pinion: number }) => (
  <>
    <Lines d={`M64 ${y - 1.5}H176M64 ${y + 1.5}H176`} />
    <Contour d={box(pinion - 8, y - 5, pinion + 8, y + 5)} />
    <Lines d={`M${pinion - 8} ${y - 1.5}h16M${pinion - 8} ${y + 1.5}h16`} />
  </>
)

const grooves = Array.from({ length: 9 }, (_, i) => {
  const [x, r] = [92 + i * 8, 32 - i * 2]
  return `M${x} ${230 - r}q5 ${r} 0 ${2 * r}`
}).join('')

/** From the side: dial at the left, the cone of the fusee with its chain to the barrel, the pendulum hung from the back cock. */
export const FuseeMovement = () => (
  <>
    <Pendulum x={206} top={46} bob={246} r={15} />
    <Contour d={box(176, 38, 214, 46)} />
    <Lines d="M184 60H198V120H206" />
    {[34, 282].map(y => (
      <Contour key={y} d={box(64, y - 4, 176, y + 4)} />
    ))}
    <Arbor y={60} pinion={132} />
    <OnEdge x={156} y={60} r={18} />
    <Arbor y={92} pinion={148} />
    <OnEdge x={132} y={92} r={24} />
    <Arbor y={122} pinion={84} />
    <OnEdge x={148} y={122} r={24} />
    <Contour d={box(80, 142, 160, 190)} />
    <Contour d={box(75, 140, 81, 192)} />
    <Contour d={box(159, 140, 165, 192)} />
    <Lines d="M81 149H159M81 156H159" />
    <path strokeWidth={1.75} strokeDasharray="3 2.4" d="M90 142V190M97 142V190M104 142V190M104 190L118 204" />
    <Contour d="M84 196Q96 198 96 200Q128 204 162 216V244Q128 256 96 260Q96 262 84 264Z" />
    <Lines d={grooves} />
    <OnEdge x={80} y={230} r={38} />
    <Lines d="M162 228H176M162 232H176M64 228H77M64 232H77" />
    <Contour d={box(56, 24, 64, 292)} />
    <Contour d={box(176, 24, 184, 292)} />
    {[34, 282].map(y => (
      <g key={y}>
        <Round at={[60, y]} r={3} />
        <Round at={[180, y]} r={3} />
      </g>
    ))}
    <Contour d={box(44, 226, 56, 234)} />
    <Contour d={box(34, 20, 39, 224)} />
    <Lines d="M39 120H56M39 124H56M20 122H34M24 116v-60M28 118v-36" />
    <Contour d={box(20, 292, 220, 306)} />
    <Lines d="M26 299H214" />
  </>
)
