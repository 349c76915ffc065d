// The composition root of the page.
import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'

import { App } from './ui/app.tsx'
import { createWorkbench } from './workbench/create-workbench.ts'

createRoot(document.getElementById('root')!).render(
  <StrictMode>
    <App workbench={createWorkbench()} />
  </StrictMode>,
)
