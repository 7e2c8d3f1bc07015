import { SmallFace } from '../face.tsx'
import { around, box, Coil, Contour, Lines, Mirrored, mid, type Place, Round, Screw, slab } from '../kit.tsx'

/** A chain of small links. */
const Chain = ({ x, from, to }: { x: number; from: number; to: number }) => (
  <path strokeWidth={1.75} strokeDasharray="2.2 2.6" d={`M${x} ${from}V${to}`} />
)

/** A weight cast as a fir cone. */
const Cone = ({ at: [x, y] }: { at: Place }) => (
  <>
    <Contour d={`M${x} ${y}q10 4 9 20q-2 12 -9 18q-7 -6 -9 -18q-1 -16 9 -20Z`} />
    <Lines
      d={`M${x - 7} ${y + 9}q7 6 14 0M${x - 9} ${y + 17}q9 7 18 0M${x - 8} ${y + 25}q8 7 16 0M${x - 5} ${y + 32}q5 4 10 0`}
    />
  </>
)

/** A pendulum that ends in a leaf. */
const LeafPendulum = () => (
  <>
    <Lines d={`M${mid} 206V250`} />
    <Contour d={`M${mid} 242q13 6 15 17q-4 11 -15 19q-11 -8 -15 -19q2 -11 15 -17Z`} />
    <Lines d={`M${mid} 246v30M${mid} 256l8 -4M${mid} 256l-8 -4M${mid} 266l9 -5M${mid} 266l-9 -5`} />
  </>
)

const Hanging = () => (
  <>
    <Chain x={98} from={206} to={252} />
    <Chain x={106} from={206} to={302} />
    <Chain x={134} from={206} to={302} />
    <Chain x={142} from={206} to={240} />
    <Round at={[106, 305]} r={3} />
    <Round at={[134, 305]} r={3} />
    <Cone at={[98, 252]} />
    <Cone at={[142, 240]} />
    <LeafPendulum />
  </>
)

const Roof = () => (
  <>
    <Contour d={`M${mid} 22L198 100L190 110L${mid} 40L50 110L42 100Z`} />
    <Lines d={`M${mid} 31L194 105M${mid} 31L46 105`} />
  </>
)

const leaf = (at: Place, turn: number): string => {
  const tip = around(at, 20, turn)
  const [left, right] = [around(at, 12, turn - 0.09), around(at, 12, turn + 0.09)]
  return `M${at.join(' ')}Q${left.join(' ')} ${tip.join(' ')}Q${right.join(' ')} ${at.join(' ')}M${at.join(' ')}L${around(at, 15, turn).join(' ')}`
}

/** A little house with a bird behind its door. */
export const CuckooFront = () => (
  <>
    <Hanging />
    <Contour d={`M66 96L${mid} 40L174 96V206H66Z`} />
    <Lines d="M72 100V200H168V100" />
    <Roof />
    <Contour d={`M${mid - 13} 96V78A13 13 0 0 1 ${mid + 13} 78V96Z`} />
    <Lines d={`M${mid - 16} 98H${mid + 16}`} />
    <Contour d={`M${mid - 8} 94q-1 -10 6 -13q1 -7 8 -6l5 3l-5 2q2 8 -4 14Z`} />
    <Lines d={`M${mid - 4} 90q5 0 7 -6`} />
    <Mirrored>
      <Contour d={leaf([80, 196], 0.06)} />
      <Contour d={leaf([84, 196], 0.2)} />
      <Contour d={leaf([78, 122], 0.44)} />
      <Contour d={leaf([80, 120], 0.28)} />
      <Contour d="M60 206h60v8h-60q-6 -4 0 -8Z" />
    </Mirrored>
    <SmallFace at={[mid, 152]} r={36} />
  </>
)

/** The back door off its turn buttons: gong, bellows to both sides, and the loop it hangs by. */
export const CuckooBack = () => (
  <>
    <Hanging />
    <Contour d={`M66 96L${mid} 40L174 96V206H66Z`} />
    <Roof />
    <Contour d={`M${mid - 8} 58a8 8 0 0 1 16 0v6h-16Z`} />
    <Lines d={`M${mid - 3} 58a3 3 0 0 1 6 0`} />
    <Contour d={slab(42, 92, 200)} />
    <Lines d={slab(38, 96, 196)} />
    <Coil at={[mid, 156]} from={30} to={8} turns={3} />
    <Screw at={[mid, 156]} r={4} />
    <Lines d={`M${mid} 152V112`} />
    <Mirrored>
      <Contour d={box(66, 118, 76, 168)} />
      <Lines d="M66 126l10 4M66 134l10 4M66 142l10 4M66 150l10 4" />
      <Contour d="M72 92h10l2 7h-12Z" />
    </Mirrored>
    <Contour d={slab(60, 206, 213)} />
  </>
)
