import { problemCheck, theLanguage } from '../check.ts'
import { replace } from '../fix-text.ts'

export default problemCheck({
  id: 'job/ratio-unclear',
  problem: 'ratio-unclear',
  severity: 'error',
  title: 'Ratio written as a fraction',
  why: 'Some write 1/2 for a reduction of 2. Read as a number it is 0.5, a gear that speeds the shaft up.',
  source: theLanguage,
  fires: `gear {
  ratio: 1/2
#        ^^^ 1:2 for a reduction
}`,
  quiet: `gear { ratio: 2 }`,
  words: ({ ratio, number }, written) => ({
    message: `${written} can be a reduction, or ${number} motor turns for each shaft turn.`,
    todo: `Write ${ratio} for a reduction, or ${number}.`,
    found: written,
    data: { readings: [ratio, number] },
  }),
  // None is preferred: only the person knows.
  fixes: ({ at, data }) =>
    ((data?.['readings'] ?? []) as readonly string[]).map((reading) => ({
      title: `Write ${reading}`,
      edits: [replace(at, reading)],
      uncovers: true,
    })),
})
