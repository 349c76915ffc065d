// A section of the panel that folds away and stays so; what is folded is not worked out.
import { ChevronRight } from 'lucide-react'
import { type ReactNode, useState } from 'react'

import { readSetting, writeSetting } from '../../workbench/settings.ts'

interface FoldSectionProps {
  readonly id: string
  readonly title: string
  readonly children: ReactNode
}

export function FoldSection({ id, title, children }: FoldSectionProps) {
  const entry = `folded.${id}`
  const [folded, setFolded] = useState(() => readSetting(entry) === 'yes')
  const toggle = () => {
    writeSetting(entry, folded ? 'no' : 'yes')
    setFolded(!folded)
  }
  return (
    <section className="fold" aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>
        <button type="button" className="fold-button" aria-expanded={!folded} onClick={toggle}>
          {title}
          <ChevronRight aria-hidden="true" />
        </button>
      </h2>
      {!folded && children}
    </section>
  )
}
