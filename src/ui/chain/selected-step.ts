// The step whose controls are shown, with its operation.
import { isFree, type Chain, type Step } from '../../edits/stack.ts'
import type { Operation } from '../../operations/define.ts'
import { operations } from '../../operations/index.ts'
import { useSession, useShownEdit } from '../workbench-context.tsx'

const noSteps: Chain = []

export function useChain(): Chain {
  return useShownEdit((edit) => edit?.chain ?? noSteps)
}

/** The operation of a step, or undefined where this version of the program does not know it. */
export function operationOf(step: Step): Operation | undefined {
  return operations.find((operation) => operation.id === step.operation)
}

export function titleOf(step: Step): string {
  return operationOf(step)?.title ?? step.operation
}

export function useSelectedStep(): { step: Step; operation: Operation; index: number } | null {
  const chain = useChain()
  const selectedId = useSession((session) => session.selectedStepId)
  const index = chain.findIndex((step) => step.id === selectedId)
  const operation = index < 0 ? undefined : operationOf(chain[index])
  return operation ? { step: chain[index], operation, index } : null
}

/** Whether the step may stand at `toIndex`: free steps stay between the neutral and the output. */
export function mayStandAt(chain: Chain, step: Step, toIndex: number): boolean {
  const displaced = chain[toIndex]
  return displaced !== undefined && isFree(step) && isFree(displaced)
}
