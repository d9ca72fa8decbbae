import { code, fence, table } from './markdown.ts'

const forms: readonly (readonly [form: string, examples: readonly string[], meaning: string])[] = [
  [
    'number',
    ['35', '-0.02', '1e3', '3/4', '1-1/4', '1 1/4'],
    'The decimal separator is a point, never a comma. A fraction is a number.',
  ],
  ['amount', ['420 mm', '1-1/4 in', '90 degC', '2/0 AWG'], 'A number and its unit.'],
  [
    'arithmetic',
    ['148 mm - 26 mm', '2 * shaft.diameter', '(1 m + 2 ft) / 2'],
    'Kinds are checked: a length and a mass cannot be added.',
  ],
  [
    'tolerance',
    ['26 mm +3/-2 mm', '35 mm ± 0.02 mm'],
    'A nominal size and how far it may differ from it. `+/-` is the same as `±`.',
  ],
  ['fit', ['35 mm h9'], 'A nominal size and its ISO 286 class: h, H, js or JS, grades 5 to 11.'],
  ['limits', ['84..108 V', 'max 0.10 mm', 'min 4 mm'], 'Both limits, or one.'],
  [
    'round the shaft',
    ['top 1.92 mm, starboard 1.80 mm', '0 deg 1.92 mm, 120 deg 1.80 mm'],
    'Places as words, or as degrees clockwise from the top looking forward.',
  ],
  ['word', ['stud-and-nuts'], 'One of the words allowed for the fact, or a name.'],
  ['text', ['"Launch 07"'], 'In straight double quotes, on one line; `\\"` is a quote inside it.'],
  ['date', ['2026-03-04', '2026-03-04T14:30'], 'ISO 8601.'],
  [
    'reference',
    ['main', 'starboard.dry-2', 'shaft.diameter'],
    'A name, looked up from the inner block outwards. A dot goes into a block.',
  ],
]

/** How values are written: a section of the reference. */
export const valueForms = `## Values

${table(
  ['form', 'examples', 'meaning'],
  forms.map(([form, examples, meaning]) => [form, examples.map(code).join(', '), meaning]),
)}

The origin of a value follows it in square brackets:

${fence(`seal {
  compression: 26 mm +3/-2 mm [maker]
  free-length: 148 mm [measured 2026-03-04]
}
shaft {
  diameter: 35 mm h9 [drawing "S-07-31"]
}`)}

- \`like: name\` takes every fact that the block does not state itself from the named block of the same kind.
- In a drive, \`like: port\` also takes the blocks of the other drive ([the rules](language.md#twin-drives)).
- \`use "path"\` at the left margin lets the file use the blocks of another file. The path starts at the folder of the file and must stay inside the workspace folder.
- \`#\` begins a comment. \`##\` begins a comment that belongs to the block or fact on the next line.`
