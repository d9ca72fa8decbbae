import type { Section } from '../../job/model.ts'
import type { View } from '../../job/per-section.ts'
import { type Mention, mentionsIn, targetAt } from './target.ts'

/** Every word of the file that stands for the same as the one at an offset. */
export function highlights(view: View, section: Section, offset: number): readonly Mention[] {
  const target = targetAt(view, section, offset)
  return target ? mentionsIn(view, target) : []
}
