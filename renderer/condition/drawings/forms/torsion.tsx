import { SmallFace } from '../face.tsx'
import { box, Contour, Lines, Mirrored, mid, Oval, Round, Screw, slab } from '../kit.tsx'

/** The glass over all, drawn last: nothing behind it is hidden. */
const Dome = () => (
  <>
    <Lines d="M58 264V96A62 68 0 0 1 182 96V264" />
    <Lines d="M68 236V100Q69 66 92 52M172 120V226" />
  </>
)

const Base = () => (
  <>
    <Mirrored>
      <Contour d="M60 298h14v8q-7 4 -14 0Z" />
    </Mirrored>
    <Contour d="M48 286V292Q50 301 120 301T192 292V286Z" />
    <Oval at={[mid, 284]} rx={72} ry={11} />
    <Contour d="M58 268V278Q60 287 120 287T182 278V268Z" />
    <Oval at={[mid, 266]} rx={62} ry={9} />
    <Oval at={[mid, 262]} rx={44} ry={6} />
  </>
)

/** Four balls that turn on a wire. */
const Balls = () => (
  <>
    <Lines d={`M${mid} 168V226`} />
    <Contour d={slab(2.5, 222, 246)} />
    <Mirrored>
      <Lines d="M120 232H96M120 234l-16 10" />
      <Round at={[92, 233]} r={9} main />
      <Lines d="M86 230q2 -4 6 -4" />
    </Mirrored>
    <Round at={[106, 244]} r={9.5} main />
    <Round at={[134, 244]} r={9.5} main />
    <Lines d="M100 241q2 -4 6 -4M128 241q2 -4 6 -4" />
    <Round at={[mid, 224]} r={4} />
  </>
)

const Columns = () => (
  <Mirrored>
    <Contour d={box(84, 158, 90, 260)} />
    <Contour d={box(81, 152, 93, 158)} />
    <Contour d={box(81, 254, 93, 262)} />
    <Lines d="M87 162V250" />
  </Mirrored>
)

/** A dial on two columns, and a pendulum that turns instead of swinging, under a glass dome. */
export const TorsionFront = () => (
  <>
    <Base />
    <Balls />
    <Columns />
    <Contour d={slab(42, 146, 153)} />
    <SmallFace at={[mid, 108]} r={39} />
    <Contour d={`M${mid - 9} 69Q${mid} 54 ${mid + 9} 69Z`} />
    <Dome />
  </>
)

/** The back plate: barrel and click, the guard of the suspension wire, and the fork. */
export const TorsionBack = () => (
  <>
    <Base />
    <Balls />
    <Columns />
    <Contour d={slab(42, 146, 153)} />
    <Contour d={slab(30, 74, 146)} />
    <Round at={[104, 122]} r={10} />
    <Screw at={[104, 122]} r={4} />
    <Contour d="M110 106l6 2l-4 6l-5 -2Z" />
    <Round at={[136, 110]} r={2.5} />
    <Round at={[134, 132]} r={2.5} />
    <Mirrored>
      <Screw at={[95, 79]} r={3} />
      <Screw at={[95, 141]} r={3} />
    </Mirrored>
    <Contour d={box(mid + 8, 62, mid + 22, 72)} />
    <Contour d={`M${mid - 5} 66H${mid + 5}V182H${mid - 5}Z`} />
    <Lines d={`M${mid} 62V186M${mid - 9} 90H${mid + 9}M${mid - 9} 90v-7M${mid + 9} 90v-7`} />
    <Dome />
  </>
)
