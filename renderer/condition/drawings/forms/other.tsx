import { SmallFace } from '../face.tsx'
import { box, Contour, Lines, Mirrored, mid, Round, Screw, slab } from '../kit.tsx'

const Case = () => (
  <>
    <Mirrored>
      <Contour d="M50 276h26v8q-13 4 -26 0Z" />
    </Mirrored>
    <Contour d={slab(76, 82, 92)} />
    <Contour d={slab(70, 92, 266)} />
    <Contour d={slab(76, 266, 277)} />
  </>
)

/** A plain case, for whatever has no drawing of its own. */
export const OtherFront = () => (
  <>
    <Case />
    <Contour d={slab(60, 102, 256)} />
    <Lines d={slab(55, 107, 251)} />
    <SmallFace at={[mid, 164]} r={47} />
    <Lines d="M68 226H172M62 176v8" />
    <Lines d="M180 122h4v12h-4M180 222h4v12h-4" />
    <Round at={[mid, 239]} r={4} />
  </>
)

/** Its back: a door, and the screws of the board. */
export const OtherBack = () => (
  <>
    <Case />
    <Contour d={slab(52, 112, 248)} />
    <Lines d={slab(47, 117, 243)} />
    <Lines d="M84 138H156M84 145H156M84 152H156M84 159H156" />
    <Contour d={box(158, 186, 168, 200)} />
    <Lines d="M163 190v6M68 132h-4v12h4M68 214h-4v12h4" />
    <Mirrored>
      <Screw at={[57, 100]} r={3} />
      <Screw at={[57, 258]} r={3} />
    </Mirrored>
  </>
)
