import fc from 'fast-check'

const words = [
  'job',
  'drive',
  'seal',
  'main',
  'gaps',
  'free-length',
  'top',
  'to',
  'like',
  'use',
  'x',
  'h9',
  'måling',
  '轴',
]
const signs = [
  '{',
  '}',
  '[',
  ']',
  '(',
  ')',
  ':',
  ',',
  '..',
  '+',
  '-',
  '−',
  '*',
  '/',
  '±',
  '+/-',
  '"',
  '\\',
  '#',
  '##',
  ';',
  '@',
  '$',
]
const values = [
  '148 mm',
  '26 mm +3/-2 mm',
  '1-1/4 in',
  '3/4',
  '-0.02',
  '1e3',
  '1e999',
  '2026-03-04',
  '"text"',
  '"open',
  '84..108 V',
  '% 3',
  '35,2',
  '?',
  '? mm',
  '\u{1F6A2}',
]
const gaps = [' ', ' ', ' ', '  ', '\t', '\n', '\n', '\n', '\r\n', '\r', '\u2028', '\uFEFF', '\u00A0']

/** The language's own pieces in any order: nearly right and quite wrong texts alike. */
export const soup = (maxLength = 60): fc.Arbitrary<string> =>
  fc
    .array(fc.constantFrom(...words, ...signs, ...values, ...gaps), { maxLength })
    .map((pieces) => pieces.join(''))

/** Lines of values, words and the signs between them, nearly right. */
export const nearly: fc.Arbitrary<string> = fc
  .array(
    fc.tuple(
      fc.constantFrom('', '  ', 'free-length: ', 'colour: ', 'like: ', 'seal { ', '} ', 'kind:'),
      fc.array(
        fc.tuple(
          fc.constantFrom(
            ...words,
            ...values,
            ...[
              '.5 in',
              '1.5',
              '.5',
              'M16x1.5',
              'a.b.c',
              '+-',
              '+3',
              '-2',
              '+.1/-.2',
              '1 1/4',
              '“x”',
              'h9',
              'max',
            ],
            ...[
              '[maker]',
              '[drawing "S"]',
              '2026-03-04T14:30',
              '3 turns',
              'µm',
              '%',
              '4 x',
              '(',
              ')',
              '+/-',
              '±',
            ],
          ),
          fc.constantFrom(' ', ' ', ', ', '..', ' + ', ' * ', '/', ''),
        ),
        { maxLength: 5 },
      ),
      fc.constantFrom('\n', ' # note\n', '\r\n', '}\n', ' {\n'),
    ),
    { maxLength: 6 },
  )
  .map((lines) =>
    lines.map(([before, of, after]) => before + of.map((piece) => piece.join('')).join('') + after).join(''),
  )

/** Any text at all. */
const anything = fc.string({ unit: 'binary', maxLength: 200 })

/** A job of several blocks, each whole or broken somewhere. */
export const jobs = fc
  .array(
    fc.constantFrom(
      'job "x" {\n  vessel: "Launch"\n  show-in: inch\n}\n',
      'battery house { nominal: 96 V  window: 84..108 V }\n',
      'drive main {\n  battery: house\n  seal { free-length: 148 mm  fitted-length: free-length - 26 mm }\n}\n',
      'drive port {\n  gear { like: spare }\n  cable feed { from: house  to: motor  conductor: 35 mm2 }\n}\n',
      'gear spare { ratio: 2.5 }\n',
      'gear other { like: spare }\n',
      'gear spare { like: other  turns: same }\n',
      'drive a { gear { ratio: b.gear.ratio } }\n',
      'drive b { gear { ratio: a.gear.ratio } }\n',
      'concession alignment/gauge-diameter-beyond-flange {\n  on: main\n  reason: "x"\n  granted-by: "y"\n  until: 2026-04-15\n}\n',
      'drive main { coupling { flange-diameter: 100 mm  gauge-diameter: 110 mm } }\n',
      '# a comment\n\n',
      '## about the next\n',
      'drive half {\n  shaft {\n    diameter: 35\n',
      'use "parts.wright"\n',
      'reading dry-1 { gauge: 0.02 mm }\n',
      'shaft {\n  length: .5 m +- 1 mm\n}\n',
      '}\n',
      'nonsense\n',
    ),
    { maxLength: 8 },
  )
  .map((blocks) => blocks.join(''))

export const texts = fc.oneof(soup(), anything, jobs)
