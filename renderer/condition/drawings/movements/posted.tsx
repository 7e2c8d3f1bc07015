import { box, Contour, Hidden, Lines, Mirrored, mid, Round, Wheel } from '../kit.tsx'

/** From before with the dial off: the going train between its bars, verge and crown wheel above, the strike behind, the bell over all. */
export const PostedMovement = () => (
  <>
    <Contour d={`M66 62Q66 18 ${mid} 14T174 62Q${mid} 72 66 62Z`} />
    <Lines d={`M69 57Q${mid} 66 171 57M${mid} 66V82M82 40q6 -12 16 -16`} />
    <Contour d={box(40, 82, 200, 92)} />
    <Contour d={box(40, 246, 200, 256)} />
    <Mirrored>
      <Contour d={box(46, 92, 56, 246)} />
      <Lines d="M46 112H56M46 116H56M46 222H56M46 226H56" />
      <Contour d="M46 256q-4 8 0 12q5 6 10 0q4 -4 0 -12Z" />
    </Mirrored>
    <Hidden d="M74 198a36 36 0 1 0 72 0a36 36 0 1 0 -72 0M94 198a36 36 0 1 0 72 0a36 36 0 1 0 -72 0" />
    <Lines d="M106 204V312M134 204V292" />
    <Wheel at={[mid, 204]} r={38} teeth={56} />
    <Round at={[mid, 204]} r={16} />
    <Wheel at={[mid, 152]} r={24} teeth={40} />
    <Contour
      d={`M${mid - 18} 112H${mid + 18}L${mid + 16} 126l-4 -6l-4 6l-4 -6l-4 6l-4 -6l-4 6l-4 -6l-4 6Z`}
    />
    <Lines
      d={`M${mid} 122V146M${mid - 30} 103H${mid + 30}M${mid - 30} 100v6M${mid + 30} 100v6M${mid - 10} 103v9M${mid + 10} 103l6 8`}
    />
    <Contour d={box(mid - 4, 92, mid + 4, 99)} />
    <Contour d={box(mid - 4, 128, mid + 4, 246)} />
    <Round at={[mid, 152]} r={2.5} />
    <Round at={[mid, 204]} r={3} />
    <Contour d={box(mid - 40, 128, mid + 40, 133)} />
    <Lines d="M172 246V112Q172 84 182 74V60" />
    <Round at={[180, 56]} r={6} main />
    <Lines d="M172 166l-12 6M172 170l-12 6" />
  </>
)
