import { Link, useLocation } from 'wouter'
import { pageNames } from '../pages.ts'
import { useSay } from '../parts/announcer.tsx'
import { CountWheel } from '../parts/count-wheel.tsx'
import { useShop } from '../shop.tsx'

/** The seven pages on the left edge of the book. */
export function ThumbIndex() {
  const { words, settings } = useShop()
  const [path] = useLocation()
  const say = useSay()
  return (
    <nav className="spine" aria-label={words.screens.thumbIndex}>
      <p className="colophon">
        <CountWheel passed={8} />
        {settings.shop.name}
      </p>
      <ul className="thumbs">
        {pageNames.map((name, index) => (
          <li key={name}>
            <Link
              href={`/${name}`}
              onClick={() => say('')}
              aria-current={path.split('/')[1] === name ? 'page' : undefined}
            >
              {words.screens.pages[name]}
              <span className="key" aria-hidden="true">
                {index + 1}
              </span>
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  )
}
