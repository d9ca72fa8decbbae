import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/source-unread',
  problem: 'source-unread',
  severity: 'error',
  title: 'Fact taken from a block where it could not be read',
  why: 'Whatever depends on the fact is not checked here either, and must not pass for sound.',
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
    message: `${names.join(', ')} of ${path} cannot be used as written there, so it is not known here.`,
    todo: 'Mend it there, or write it here.',
    found: path,
  }),
})
