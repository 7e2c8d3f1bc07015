import {
  box,
  Coil,
  Contour,
  Hidden,
  Lines,
  Mirrored,
  mid,
  Pendulum,
  Round,
  Screw,
  Wheel,
  WindingSquare,
} from '../kit.tsx'

/** A ratchet with its click and spring. */
const Ratchet = ({ x, y }: { x: number; y: number }) => (
  <>
    <Wheel at={[x, y]} r={17} teeth={24} arms={0} />
    <WindingSquare at={[x, y]} r={7} />
    <Contour d={`M${x + 12} ${y - 22}l7 2l-3 9l-6 -3Z`} />
    <Screw at={[x + 16, y - 22]} r={3} />
  </>
)

/** Two spring trains between plates, from behind: barrels, escapement, pendulum; hammer and gong rods to the side. */
export const PlatedMovement = () => (
  <>
    <Contour d={box(40, 62, 200, 232)} />
    <Lines d={box(44, 66, 196, 228)} />
    <Mirrored>
      <Screw at={[52, 74]} r={5} />
      <Screw at={[52, 220]} r={5} />
    </Mirrored>
    <Hidden d="M46 182a34 34 0 1 0 68 0a34 34 0 1 0 -68 0M126 182a34 34 0 1 0 68 0a34 34 0 1 0 -68 0" />
    <Ratchet x={80} y={182} />
    <Ratchet x={160} y={182} />
    <Hidden d="M62 126a22 22 0 1 0 44 0a22 22 0 1 0 -44 0M140 118a20 20 0 1 0 40 0a20 20 0 1 0 -40 0" />
    <Round at={[84, 126]} r={2.5} />
    <Round at={[160, 118]} r={2.5} />
    <Round at={[mid, 146]} r={3} />
    <Round at={[160, 88]} r={2.5} />
    <Wheel at={[mid, 110]} r={17} teeth={30} />
    <Contour
      d={`M${mid - 19} 106Q${mid - 18} 86 ${mid} 82Q${mid + 18} 86 ${mid + 19} 106L${mid + 14} 104Q${mid + 12} 92 ${mid} 91Q${mid - 12} 92 ${mid - 14} 104Z`}
    />
    <Contour d={`M${mid - 16} 50H${mid + 16}V76H${mid - 16}Z`} />
    <Screw at={[mid - 10, 64]} r={3} />
    <Screw at={[mid + 10, 64]} r={3} />
    <Contour d="M200 122h10q4 4 0 8h-10Z" />
    <Lines d="M204 130V214M208 130V214" />
    <Round at={[206, 216]} r={6} main />
    <Coil at={[206, 250]} from={24} to={7} turns={3} />
    <Contour d={box(190, 244, 212, 256)} />
    <Screw at={[206, 250]} r={3.5} />
    <Pendulum top={52} bob={284} r={20} />
  </>
)

/** Two weight trains on the seat board: lines on the barrels, the bell and its hammer above, the long pendulum behind. */
export const WeightMovement = () => (
  <>
    <Lines d={`M${mid - 1} 58V318M${mid + 1} 58V318`} />
    <Contour d="M64 52Q64 14 104 12T144 52Q104 60 64 52Z" />
    <Lines d="M67 47Q104 54 141 47M104 54V72M76 34q4 -10 12 -14" />
    <Lines d="M168 150V76Q168 56 150 44" />
    <Round at={[148, 42]} r={6} main />
    <Contour d={box(56, 72, 184, 236)} />
    <Lines d={box(60, 76, 180, 232)} />
    <Mirrored>
      <Screw at={[67, 83]} r={4.5} />
      <Screw at={[67, 226]} r={4.5} />
      <Wheel at={[88, 190]} r={28} teeth={48} arms={4} />
      <Contour d={box(74, 176, 102, 204)} />
      <Lines d="M74 181H102M74 186H102M74 191H102M74 196H102" />
      <Round at={[88, 190]} r={5} />
      <Lines d="M76 204V282M100 204V250" />
      <Round at={[88, 288]} r={12} main />
      <Round at={[88, 288]} r={4} />
      <Lines d="M88 300v12" />
    </Mirrored>
    <Wheel at={[mid, 146]} r={20} teeth={36} arms={4} />
    <Wheel at={[mid, 112]} r={16} teeth={30} arms={4} />
    <Contour
      d={`M${mid - 19} 110Q${mid - 18} 92 ${mid} 88Q${mid + 18} 92 ${mid + 19} 110L${mid + 14} 108Q${mid + 12} 98 ${mid} 97Q${mid - 12} 98 ${mid - 14} 108Z`}
    />
    <Contour d={`M${mid - 14} 62H${mid + 14}V82H${mid - 14}Z`} />
    <Screw at={[mid - 9, 72]} r={2.6} />
    <Screw at={[mid + 9, 72]} r={2.6} />
    <Contour d={box(26, 236, 214, 250)} />
    <Lines d="M34 243h26M180 241h24M96 244h14" />
  </>
)
