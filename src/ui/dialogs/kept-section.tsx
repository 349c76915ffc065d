// In the help: what this browser keeps between sessions, and how to have it forgotten. Forgetting asks once more, because it
// cannot be undone.
import { useEffect, useState } from 'react'
import { Button } from 'react-aria-components/Button'

import { useSession, useWorkbench } from '../workbench-context.tsx'

function countWords(count: number): string {
  if (count === 0) return 'Nothing is kept now.'
  return count === 1 ? 'The edit of 1 photograph is kept now.' : `The edits of ${count} photographs are kept now.`
}

export function KeptSection() {
  const workbench = useWorkbench()
  const keepsEdits = useSession((session) => session.keepsEdits)
  const [count, setCount] = useState<number | null>(null)
  const [asking, setAsking] = useState(false)
  useEffect(() => void workbench.countKept().then(setCount), [workbench])

  const forget = async () => {
    setAsking(false)
    await workbench.forgetKept()
    setCount(await workbench.countKept())
  }
  return (
    <section>
      <h3>What is kept</h3>
      <p>
        Chain, marks and filter of every photograph you open stay in this browser, and are there again when you open the
        same file, wherever it lies and whatever it is called. The photographs themselves are not kept. To carry an edit
        to another machine, save it as an edit file.
      </p>
      <p>
        <output>
          {keepsEdits
            ? count !== null && countWords(count)
            : 'This browser refused to keep edits since the page opened.'}
        </output>
      </p>
      <div className="kept-choice">
        {/* The same button, so that the focus stays on the harmless answer. */}
        <Button className="button" isDisabled={!count} onPress={() => setAsking(!asking)}>
          {asking ? 'Leave it' : 'Forget what is kept…'}
        </Button>
        {asking && (
          <Button className="button" onPress={() => void forget()}>
            Forget for good
          </Button>
        )}
      </div>
    </section>
  )
}
