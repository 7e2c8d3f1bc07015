import { SmallFace } from '../face.tsx'
import { arched, box, Contour, Finial, Hidden, Lines, Mirrored, mid, Round, Screw, slab } from '../kit.tsx'

const Feet = () => (
  <Mirrored>
    <Contour d="M78 304H98Q98 309 94 310Q92 315 92 316H78Z" />
  </Mirrored>
)

const Plinth = () => (
  <>
    <Feet />
    <Contour d={slab(42, 298, 306)} />
    <Contour d={slab(38, 242, 298)} />
    <Contour d="M92 230H148Q148 240 161 240V245H79V240Q92 240 92 230Z" />
  </>
)

/** Hood, trunk and plinth from before. */
export const LongcaseFront = () => (
  <>
    <Plinth />
    <Lines d={`${slab(30, 252, 290)}${slab(27, 255, 287)}`} />
    <Contour d={slab(28, 124, 230)} />
    <Contour d="M99 226V142Q99 138 103 138A17 10 0 0 1 137 138Q141 138 141 142V226Z" />
    <Lines d="M103 222V144A17 9 0 0 1 137 144V222Z" />
    <Round at={[107, 178]} r={2.2} />
    <Lines d="M107 180v4M139 150h3v8h-3M139 208h3v8h-3" />
    <Contour d="M82 112H158V117Q148 118 148 126H92Q92 118 82 117Z" />
    <Contour d={slab(38, 44, 112)} />
    <Mirrored>
      <Contour d={box(84, 52, 89, 108)} />
      <Contour d={box(83, 48, 90, 52)} />
      <Contour d={box(83, 106, 90, 110)} />
      <Finial at={[82, 36]} r={4} />
    </Mirrored>
    <Contour d="M77 44V36H91A29 26 0 0 1 149 36H163V44H145A25 20 0 0 0 95 44Z" />
    <Lines d="M79 40H93A27 23 0 0 1 147 40H161" />
    <Contour d={arched(28, 20, 52, 110)} />
    <Lines d={arched(24, 16, 56, 106)} />
    <Lines d={`M${mid - 8} 51A9 9 0 0 1 ${mid + 8} 51`} />
    <SmallFace at={[mid, 81]} r={22} />
    <Finial at={[mid, 12]} r={4} />
  </>
)

/** The backboard, with the movement on its seat board behind the open hood. */
export const LongcaseBack = () => (
  <>
    <Plinth />
    <Lines d="M90 246V297M150 246V297M107 247V296M134 248V297" />
    <Contour d="M82 112H158V117Q148 118 148 126H92Q92 118 82 117Z" />
    <Mirrored>
      <Contour d={box(82, 44, 91, 112)} />
      <Finial at={[82, 36]} r={4} />
    </Mirrored>
    <Contour d="M77 44V36H91A29 26 0 0 1 149 36H163V44H145A25 20 0 0 0 95 44Z" />
    <Contour d={`M92 242V46A28 22 0 0 1 148 46V242Z`} />
    <Lines d="M110 44V236M131 46V228M99 132V172M141 168V206M104 196V214M137 120v24" />
    <Round at={[mid, 42]} r={3} />
    <Lines d={`M${mid} 42v5`} />
    <Hidden d={`${slab(17, 62, 100)}${slab(25, 100, 106)}M${mid} 66V220`} />
    <Hidden d={`M${mid - 11} 214a11 11 0 1 0 22 0a11 11 0 1 0 -22 0`} />
    <Mirrored>
      <Screw at={[97, 134]} r={2.2} />
      <Screw at={[97, 224]} r={2.2} />
    </Mirrored>
  </>
)
