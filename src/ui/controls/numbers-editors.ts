// Which editor shows a list of numbers: by operation and control, one line each.
import type { ComponentType } from 'react'

import { HueBandsEditor } from './hue-bands-editor.tsx'
import { CurveEditor } from '../tones/curve-editor.tsx'
import type { NumbersEditorProps } from './numbers-editor-props.ts'
import { MixEditor } from './mix-editor.tsx'

export const numbersEditors: Readonly<Record<string, ComponentType<NumbersEditorProps>>> = {
  'channelMix rows': MixEditor,
  'hueBands bands': HueBandsEditor,
  'toneCurve points': CurveEditor,
}
