import { around, box, Coil, Contour, Lines, Mirrored, mid, type Place, Round, Screw, Wheel } from '../kit.tsx'

const pins = (at: Place, r: number) =>
  Array.from({ length: 10 }, (_, i) => <Round key={i.toString()} at={around(at, r, i / 10)} r={1.6} />)

/** Chain wheels between plates, a bellows with its lifting wire to either side, the bird on its arm. */
export const CuckooMovement = () => (
  <>
    <Mirrored>
      <Contour d={box(14, 84, 46, 190)} />
      <Lines d="M14 100L46 106M14 112L46 118M14 124L46 130M14 136L46 142" />
      <Contour d="M10 76H50L46 86H14Z" />
      <Contour d={box(22, 150, 38, 166)} />
      <Lines d="M30 76V60Q32 52 56 50L70 66" />
    </Mirrored>
    <Contour d="M104 50q-2 -16 10 -22q0 -13 12 -14q8 0 10 6l10 4l-10 3q2 14 -8 23Z" />
    <Lines d="M112 44q10 0 12 -12M130 20h.1M112 50v14M120 50v14" />
    <Contour d={box(62, 64, 178, 232)} />
    <Lines d={box(66, 68, 174, 228)} />
    <Mirrored>
      <Screw at={[74, 76]} r={4.5} />
      <Screw at={[74, 220]} r={4.5} />
    </Mirrored>
    <Wheel at={[92, 194]} r={24} teeth={36} />
    <Wheel at={[148, 194]} r={24} teeth={36} />
    <Wheel at={[96, 142]} r={20} teeth={32} />
    <Round at={[148, 138]} r={19} />
    {pins([148, 138], 15)}
    <Round at={[148, 138]} r={5} />
    <Wheel at={[mid, 98]} r={16} teeth={28} />
    <Contour d={`M${mid - 18} 94Q${mid} 72 ${mid + 18} 94L${mid + 13} 97Q${mid} 82 ${mid - 13} 97Z`} />
    <Lines d={`M${mid} 84V252M${mid - 5} 252a5 5 0 1 0 10 0`} />
    <path strokeWidth={1.75} strokeDasharray="2.6 3" d="M84 210V310M100 210V296M140 210V310M156 210V284" />
    <Coil at={[mid, 286]} from={24} to={6} turns={3} />
    <Lines d="M164 112L184 122V250" />
    <Round at={[182, 254]} r={6} main />
  </>
)
