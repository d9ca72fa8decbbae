import type { Section } from '../job/model.ts'
import type { View } from '../job/per-section.ts'
import { storeOf } from './store.ts'
import type { OfSection } from './work.ts'

/** What follows from a section where it is written, kept until the section or what is asked of the rest of the job is another. */
export function sectionPlan<T>(make: OfSection<readonly T[]>) {
  return (view: View, section: Section): readonly T[] =>
    storeOf(view.analysis, view.file).ofSection(section, make, view)
}
