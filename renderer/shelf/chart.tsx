import { useId, useLayoutEffect, useMemo, useRef, useState } from 'react'
import { civilDateOf } from '../../core/calendar/zone.ts'
import { shelfLog } from '../../core/run-in/log.ts'
import { type ChartMark, pointsText, type RateChart, rateChart } from '../../core/run-in/rate-chart.ts'
import { useShop } from '../shop.tsx'
import type { RunView } from './shelf.ts'

const height = 256
const margins = { left: 58, right: 16, top: 12, bottom: 30 }
/** So many readings get dots of their own; beyond that the line alone is clearer. */
const mostDots = 120

/** The width there is for the chart, in CSS pixels, so that its words keep their size; measured before the page is first painted. */
export function useWidth() {
  const box = useRef<HTMLDivElement>(null)
  const [width, setWidth] = useState(0)
  useLayoutEffect(() => {
    const drawn = box.current
    if (!drawn) return
    const measure = () => setWidth(Math.floor(drawn.clientWidth))
    measure()
    const watch = new ResizeObserver(measure)
    watch.observe(drawn)
    return () => watch.disconnect()
  }, [])
  return { box, width }
}

/** The error of a clock over time: readings and their fitted line by stretch, winds, what was done, and the wedge of the limit. */
export function Chart({ view }: { view: RunView }) {
  const { words, formats } = useShop()
  const { chart: said } = words.shelf
  const { box, width } = useWidth()
  const { run, repair } = view
  const log = useMemo(() => shelfLog(run.log), [run.log])
  const limit = Number(run.limitPerDay)
  const chart = useMemo(() => rateChart(log, limit, { width, height, ...margins }), [log, limit, width])
  if (log.length === 0) return <p className="quiet">{said.nothing}</p>
  return (
    <figure className="chart" ref={box}>
      {width > 0 && <Drawing chart={chart} width={width} label={said.label(repair.number)} />}
      <figcaption>{said.band(formats.signedSeconds(limit).replace('+', '±'))}</figcaption>
    </figure>
  )
}

function Drawing({ chart, width, label }: { chart: RateChart; width: number; label: string }) {
  const plot = useId()
  const inner = { width: width - margins.left - margins.right, height: height - margins.top - margins.bottom }
  return (
    <svg viewBox={`0 0 ${width} ${height}`} width={width} height={height} role="img" aria-label={label}>
      <clipPath id={plot}>
        <rect x={margins.left} y={margins.top} {...inner} />
      </clipPath>
      <g clipPath={`url(#${plot})`}>
        {chart.segments.map(
          ({ band, points }) =>
            band.length > 0 && <polygon key={points[0]?.x} className="band" points={pointsText(band)} />,
        )}
      </g>
      <SecondLines lines={chart.seconds} left={margins.left} right={width - margins.right} />
      <Winds chart={chart} />
      <Marks chart={chart} width={width} />
      {chart.segments.map(({ points, fit }) => (
        <g key={points[0]?.x}>
          {fit && <polyline className="fit" points={pointsText(fit)} />}
          <polyline className="readings" points={pointsText(points)} />
          {points.length <= mostDots &&
            points.map(({ x, y }) => <circle key={x} className="dot" cx={x} cy={y} r="3.5" />)}
        </g>
      ))}
    </svg>
  )
}

interface LinesProps {
  readonly lines: RateChart['seconds']
  readonly left: number
  readonly right: number
}

/** Horizontal lines at round numbers of seconds. */
export function SecondLines({ lines, left, right }: LinesProps) {
  const { formats } = useShop()
  return lines.map(({ y, value }) => (
    <g key={value}>
      <line className={value === 0 ? 'zero' : 'rule'} x1={left} x2={right} y1={y} y2={y} />
      <text x={left - 8} y={y + 4} textAnchor="end">
        {formats.signedSeconds(value)}
      </text>
    </g>
  ))
}

const bottom = height - margins.bottom

function Winds({ chart }: { chart: RateChart }) {
  const { formats, settings } = useShop()
  return (
    <>
      {chart.winds.map(({ x, at }) => (
        <line key={at} className="wind" x1={x} x2={x} y1={margins.top} y2={bottom} />
      ))}
      {chart.days.map(({ x, at }, index) => {
        const date = formats.shortDate(civilDateOf(at, settings.place.timeZone))
        const anchor = index === 0 ? 'start' : index === chart.days.length - 1 ? 'end' : 'middle'
        return (
          <text key={at} x={x} textAnchor={anchor} y={bottom + 18}>
            {date}
          </text>
        )
      })}
    </>
  )
}

function Marks({ chart, width }: { chart: RateChart; width: number }) {
  return chart.marks.map((mark, index) => {
    const late = mark.x > width / 2
    return (
      <g key={mark.at}>
        <line className={mark.kinds[0]} x1={mark.x} x2={mark.x} y1={margins.top} y2={bottom} />
        <text
          className={`${mark.kinds[0]} mark`}
          x={late ? mark.x - 6 : mark.x + 6}
          y={margins.top + 12 + (index % 3) * 15}
          textAnchor={late ? 'end' : 'start'}
        >
          <MarkWords mark={mark} />
        </text>
      </g>
    )
  })
}

function MarkWords({ mark }: { mark: ChartMark }) {
  const { words, formats } = useShop()
  const { chart } = words.shelf
  const said = { nut: chart.nut(formats.number(mark.turns)), hands: chart.hands, ...chart.done }
  return mark.kinds.map(kind => said[kind]).join(', ')
}
