import { SmallFace } from '../face.tsx'
import { box, Contour, Finial, Lines, Mirrored, mid, Pendulum, Round, slab, Weight } from '../kit.tsx'

const Bell = () => (
  <>
    <Mirrored>
      <Lines d="M78 104Q84 62 116 48M82 104Q88 68 117 53" />
    </Mirrored>
    <Contour d={`M82 100Q82 60 ${mid} 58T158 100Q${mid} 108 82 100Z`} />
    <Lines d="M84 95Q120 103 156 95M94 82q4 -12 14 -16" />
    <Finial at={[mid, 56]} r={5} />
  </>
)

/** A pierced gallery of leaves and scrolls. */
const Fret = () => (
  <>
    <Contour
      d={`M74 134V122Q80 110 94 112Q104 114 110 104Q114 96 ${mid} 94Q126 96 130 104Q136 114 146 112Q160 110 166 122V134Z`}
    />
    <Mirrored>
      <Lines d="M80 130q0 -12 10 -12q7 2 5 9q-4 4 -7 0M100 130q-1 -10 7 -12q7 -1 7 6M114 130q-2 -12 6 -26" />
    </Mirrored>
    <Lines d={`M${mid} 112q5 6 0 14q-5 -8 0 -14`} />
  </>
)

const Frame = () => (
  <Mirrored>
    <Finial at={[70, 132]} r={4.5} />
    <Contour d={box(66, 140, 74, 246)} />
    <Lines d="M66 160H74M66 164H74M66 222H74M66 226H74" />
    <Contour d="M66 256q-3 6 0 10q4 5 8 0q3 -4 0 -10Z" />
  </Mirrored>
)

const Plates = () => (
  <>
    <Contour d={slab(58, 132, 141)} />
    <Contour d={slab(58, 246, 256)} />
  </>
)

/** Four pillars, a bell in its strap, frets, and one hand. */
export const LanternFront = () => (
  <>
    <Lines d="M108 256V286M132 256V300" />
    <Weight x={108} top={280} half={8} length={24} />
    <Bell />
    <Fret />
    <Contour d={slab(44, 141, 246)} />
    <Frame />
    <Plates />
    <Lines d="M80 146q8 0 9 9M160 146q-8 0 -9 9M80 242q8 0 9 -9M160 242q-8 0 -9 -9" />
    <SmallFace at={[mid, 194]} r={52} one />
    <Round at={[mid, 194]} r={20} />
    <Lines d={`M${mid} 194L${mid - 34} 171`} />
  </>
)

/** Its iron back: hoop and spurs, hammer, and the pendulum that hangs behind. */
export const LanternBack = () => (
  <>
    <Lines d="M108 256V286M132 256V300" />
    <Weight x={132} top={280} half={8} length={24} />
    <Bell />
    <Contour d={slab(44, 141, 246)} />
    <Frame />
    <Plates />
    <Contour
      d={`M${mid - 14} 132V120A14 13 0 0 1 ${mid + 14} 120V132H${mid + 9}V121A9 8 0 0 0 ${mid - 9} 121V132Z`}
    />
    <Lines d="M84 141V246M156 141V246" />
    <Mirrored>
      <Contour d="M78 262l-8 14l4 2l9 -16Z" />
      <Lines d="M90 158h8M90 230h8" />
    </Mirrored>
    <Lines d="M146 246V150Q146 116 158 98" />
    <Round at={[156, 98]} r={5} />
    <Contour d={slab(8, 144, 152)} />
    <Pendulum top={150} bob={282} r={10} />
  </>
)
