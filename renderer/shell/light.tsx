import { useEffect } from 'react'
import { useRemembered } from '../remembered.ts'
import { useWords } from '../words.ts'

/** Daylight, lamp, or as the computer has it. */
export function Light() {
  const { lamp } = useWords().screens
  const [light, setLight] = useRemembered('light')
  useEffect(() => {
    if (light) document.documentElement.dataset.theme = light
    else delete document.documentElement.dataset.theme
  }, [light])
  return (
    <span className="field">
      <label htmlFor="light">{lamp.label}</label>
      <select id="light" value={light} onChange={event => setLight(event.target.value)}>
        <option value="">{lamp.auto}</option>
        <option value="light">{lamp.light}</option>
        <option value="lamp">{lamp.lamp}</option>
      </select>
    </span>
  )
}
