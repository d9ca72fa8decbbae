import { problemCheck, theLanguage } from '../check.ts'
import { declaredAt } from '../declared-at.ts'
import { factAt, insert } from '../fix-text.ts'

export default problemCheck({
  id: 'job/value-empty',
  problem: 'value-empty',
  severity: 'error',
  title: 'Fact without a value',
  why: 'A fact that is begun and not finished says nothing yet.',
  source: theLanguage,
  fires: `seal {
  free-length:
# ^^^^^^^^^^^ no value
}`,
  quiet: `seal { free-length: 148 mm }`,
  words: (p) => ({
    message: `${p.name} has no value yet.`,
    todo: `Write ${p.words.split(':')[0]}, such as ${p.example}.`,
    data: { example: p.example },
  }),
  fixes: ({ at }, { block }) => {
    const fact = factAt(block, at)
    const shape = declaredAt(block, at)?.shape
    // A shape of several parts has words beside figures.
    const choices = shape?.forms ? [] : (shape?.choices ?? [])
    return fact
      ? choices.map((word) => ({
          title: `Write ${word}`,
          edits: [insert(at.section, fact.valueSpan.start, ` ${word}`)],
        }))
      : []
  },
})
