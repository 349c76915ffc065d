// What an editor for a list of numbers is given.
export interface NumbersEditorProps {
  readonly stepId: string
  readonly controlKey: string
  readonly numbers: readonly number[]
}
