import { problemCheck, theLanguage } from '../check.ts'
import { oneLine } from '../one-line.ts'

export default problemCheck({
  id: 'job/source-unread',
  problem: 'source-unread',
  severity: 'error',
  title: 'Fact taken from a block where it could not be read',
  why: 'The fact could not be read where it is written, so what depends on it is not checked here. No finding does not mean that it is right.',
  source: theLanguage,
  fires: `coupling standard { kind: flexible  flange-diameter: 125 mm  gap-variation: max 0.10 kg }
drive main {
  coupling { like: standard }
#                  ^^^^^^^^ gap-variation
}`,
  quiet: `coupling standard { kind: flexible  flange-diameter: 125 mm  gap-variation: max 0.10 mm }
drive main {
  coupling { like: standard }
}`,
  words: ({ path, names }) => ({
    ...oneLine(
      `${names.join(', ')} of ${path} cannot be used as written there, so ${names.length === 1 ? 'it is' : 'they are'} not known here.`,
      'A value that is taken from another block cannot be used as written there.',
    ),
    todo:
      names.length === 1 ? 'Correct it there, or write it here.' : 'Correct them there, or write them here.',
    found: path,
  }),
})
