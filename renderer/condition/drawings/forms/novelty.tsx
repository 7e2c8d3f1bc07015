import { ArabicFigures, Hands } from '../face.tsx'
import { Contour, Lines, Mirrored, mid, type Place, Round, Screw, spokes } from '../kit.tsx'

const at: Place = [mid, 180]

const Drum = () => (
  <>
    <Mirrored>
      <Contour d="M72 244L54 284q-2 6 4 6q4 0 6 -5L84 252Z" />
      <Lines d="M92 110L100 120" />
      <Contour d="M52 108Q54 70 88 66Q98 74 102 88Z" />
      <Round at={[70, 78]} r={4.5} />
    </Mirrored>
    <Contour d={`M${mid - 3} 106V86H${mid + 3}V106Z`} />
    <Round at={[mid, 82]} r={7} main />
    <Lines d="M84 68Q120 18 156 68M90 66Q120 27 150 66" />
    <Round at={at} r={80} main />
    <Round at={at} r={75} />
  </>
)

/** A drum on two legs with bells, standing for all that is made to amuse. */
export const NoveltyFront = () => (
  <>
    <Drum />
    <Round at={at} r={66} main />
    <Lines d={spokes(at, 60, 64, 60)} />
    <ArabicFigures at={at} r={50} size={14} />
    <Round at={[mid, 210]} r={12} />
    <Lines d={`${spokes([mid, 210], 8, 11, 12)}M${mid} 210l-4 -7`} />
    <Hands at={at} r={60} />
  </>
)

/** A winding key shaped as a bow. */
const Key = ({ at: [x, y] }: { at: Place }) => (
  <>
    <Contour d={`M${x} ${y}q-14 -14 -17 -3q-2 12 17 3q14 14 17 3q2 -12 -17 -3Z`} />
    <Round at={[x, y]} r={4} />
  </>
)

/** Keys to wind, knobs to set, and the slow and fast slot. */
export const NoveltyBack = () => (
  <>
    <Drum />
    <Key at={[mid - 30, 200]} />
    <Key at={[mid + 30, 200]} />
    <Round at={[mid, 160]} r={9} main />
    <Round at={[mid, 160]} r={4} />
    <Round at={[mid, 228]} r={9} main />
    <Round at={[mid, 228]} r={4} />
    <Lines
      d={`M${mid - 26} 138Q${mid} 118 ${mid + 26} 138M${mid - 28} 134l4 7M${mid + 28} 134l-4 7M${mid} 122v10`}
    />
    <Screw at={[mid - 62, 180]} r={4} />
    <Screw at={[mid + 62, 180]} r={4} />
  </>
)
