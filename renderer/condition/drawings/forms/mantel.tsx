import { SmallFace } from '../face.tsx'
import { Contour, Lines, Mirrored, mid, Round, Screw, slab, spokes } from '../kit.tsx'

const Case = () => (
  <>
    <Mirrored>
      <Contour d="M34 262h22l-3 9h-16Z" />
    </Mirrored>
    <Contour d="M30 244C64 242 66 214 68 182A52 52 0 0 1 172 182C174 214 176 242 210 244Z" />
    <Contour d={slab(98, 244, 252)} />
    <Contour d={slab(103, 252, 263)} />
    <Lines d="M19 257.5H221" />
  </>
)

/** A low case that rises over the dial. */
export const MantelFront = () => (
  <>
    <Case />
    <Lines d="M46 238C72 232 73 206 75 182A45 45 0 0 1 165 182C167 206 168 232 194 238" />
    <SmallFace at={[mid, 186]} r={43} />
    <Round at={[mid - 15, 196]} r={2.5} />
    <Round at={[mid + 15, 196]} r={2.5} />
    <Lines d="M164 180h5v12h-5" />
  </>
)

/** Its round door, holes for the sound, and the lower edge of the gong block. */
export const MantelBack = () => (
  <>
    <Case />
    <Round at={[mid, 186]} r={42} main />
    <Round at={[mid, 186]} r={36} />
    <Lines d={spokes([mid, 178], 5, 14, 10)} />
    <Round at={[mid, 178]} r={3} />
    <Lines d="M78 180h-5v12h5M158 180l5 3v6l-5 3Z" />
    <Mirrored>
      <Lines d="M62 226h10M60 231h12M57 236h16" />
      <Screw at={[30, 248]} r={2.2} />
    </Mirrored>
    <Contour d={slab(14, 206, 216)} />
    <Lines d={`M${mid - 8} 211H${mid + 8}`} />
  </>
)
