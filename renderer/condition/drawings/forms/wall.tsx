import { SmallFace } from '../face.tsx'
import { box, Contour, Lines, Mirrored, mid, Pendulum, Round, Screw, slab } from '../kit.tsx'

/** The curved foot of the drop and its little door. */
const drop = 'M82 168V262Q84 284 120 292Q156 284 158 262V168Z'

/** A round dial with a short trunk below it. */
export const WallFront = () => (
  <>
    <Mirrored>
      <Contour d="M82 186Q66 190 60 208Q56 224 66 226Q74 224 72 216Q70 212 74 210Q80 222 82 236Z" />
    </Mirrored>
    <Contour d={drop} />
    <Lines d="M89 190V260Q92 276 120 284Q148 276 151 260V190" />
    <Contour d="M98 214H142V252Q120 262 98 252Z" />
    <Pendulum top={214} bob={238} r={11} />
    <Round at={[mid, 116]} r={86} main />
    <Round at={[mid, 116]} r={80} />
    <Round at={[mid, 116]} r={70} main />
    <SmallFace at={[mid, 116]} r={65} />
    <Round at={[mid, 138]} r={3.5} />
    <Lines d="M33 110h-5v12h5M202 112l6 4l-6 4" />
  </>
)

/** The box behind it, held to the dial by pegs, with its hanging plate. */
export const WallBack = () => (
  <>
    <Round at={[mid, 116]} r={86} main />
    <Round at={[mid, 116]} r={80} />
    <Mirrored>
      <Contour d={box(60, 84, 74, 94)} />
      <Contour d={box(60, 142, 74, 152)} />
    </Mirrored>
    <Contour d="M72 58H168V262Q156 284 120 292Q84 284 72 262Z" />
    <Lines d="M80 66H160V258Q150 276 120 283Q90 276 80 258Z" />
    <Lines d="M101 66V278M139 66V278M91 120V160M149 176V214M112 226V262" />
    <Contour d={`M${mid - 15} 66V44A15 15 0 0 1 ${mid + 15} 44V66Z`} />
    <Round at={[mid, 44]} r={4} />
    <Screw at={[mid - 9, 60]} r={2.2} />
    <Screw at={[mid + 9, 60]} r={2.2} />
    <Contour d={slab(16, 268, 280)} />
    <Lines d="M117 274h6M72 120h-4v16h4" />
  </>
)
