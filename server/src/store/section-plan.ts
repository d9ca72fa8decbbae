import type { Bound } from '../job/bind.ts'
import type { Section } from '../job/model.ts'
import type { View } from '../job/per-section.ts'
import { storeOf } from './store.ts'

/** What follows from a section where it is written, kept until the section or what is asked of the rest of the job is another. */
export function sectionPlan<T>(make: (bound: Bound, view: View) => readonly T[]) {
  return (view: View, section: Section): readonly T[] =>
    storeOf(view.analysis, view.file).ofSection(section, make, view)
}
