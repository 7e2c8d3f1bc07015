import './theme/index.css'
import { QueryClientProvider } from '@tanstack/react-query'
import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { queries } from './api.ts'
import { App } from './app.tsx'
import { pageAt, pages } from './pages.ts'

const root = document.getElementById('root')
if (!root) throw new Error('index.html has no #root')

// Its code is on its way while the shop is asked for.
const page = pageAt(location.pathname)
if (page) void queries.prefetchQuery(pages[page])

createRoot(root).render(
  <StrictMode>
    <QueryClientProvider client={queries}>
      <App />
    </QueryClientProvider>
  </StrictMode>,
)
