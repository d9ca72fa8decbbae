import type { Kind } from '../quantity/kinds.ts'

/** One part of a written value. */
export interface Slot {
  /** How it stands in the form: `top`, `1.92 mm`. */
  readonly label: string
  readonly doc: string
  /** Words it may be. */
  readonly choices?: readonly string[]
  /** What an amount there is of. */
  readonly quantity?: Kind
  /** The units it is written in, the likeliest first, where not all of its kind make sense. */
  readonly units?: readonly string[]
  /** Words that may stand behind its number, where that is no unit: `4 x`. */
  readonly behind?: readonly string[]
  /** Kind of block whose terminals it may be. */
  readonly terminalsOf?: 'controller' | 'motor'
  /** Set where it is a day. */
  readonly day?: true
  /** The sign it begins with, where it has one. */
  readonly sign?: '±' | '+/-'
  /** Set where it may be left out. */
  readonly optional?: true
}

/** A way to write a value: its parts, entry by entry as commas part them. */
export interface Form {
  readonly entries: readonly (readonly Slot[])[]
  /** The last entry may come again, each time with another first word. */
  readonly again?: true
}

/** Words in the brackets behind a value, with what each says. */
export const provenanceWords: Readonly<Record<string, string>> = {
  maker: 'Stated by the maker.',
  measured: 'Measured. A date can follow.',
  drawing: 'Taken from a drawing. The drawing number follows in quotes.',
  assumed: 'Assumed for now. Every result that depends on it says so.',
}

const size = (quantity: Kind): Slot => ({ label: 'size', doc: 'The nominal size, with its unit.', quantity })

/** Tolerances behind a size. */
const toleranced = (quantity: Kind): readonly Form[] => [
  {
    entries: [
      [
        size(quantity),
        { label: '+up/-down', sign: '+/-', doc: 'How far it may be above and below: `+3/-2 mm`.', quantity },
      ],
    ],
  },
  {
    entries: [
      [
        size(quantity),
        { label: '± by', sign: '±', doc: 'How far it may be above or below: `± 0.02 mm`.', quantity },
      ],
    ],
  },
]

/** `35 mm h9`, `35 mm ± 0.02 mm`, `26 mm +3/-2 mm`. */
export const sizedForms = (quantity: Kind, classes: readonly string[]): readonly Form[] => [
  {
    entries: [
      [
        size(quantity),
        ...(classes.length > 0
          ? [
              {
                label: 'class',
                doc: 'Tolerance class of ISO 286: `h9`.',
                choices: classes,
                optional: true as const,
              },
            ]
          : []),
      ],
    ],
  },
  ...toleranced(quantity),
]

const most = (quantity: Kind): Form => ({
  entries: [
    [
      { label: 'max', doc: 'No more than what follows.', choices: ['max'] },
      { label: 'limit', doc: 'The most allowed, with its unit.', quantity },
    ],
  ],
})

/** `max 0.10 mm`, and what else has an upper end. */
export const upperForms = (quantity: Kind): readonly Form[] => [
  most(quantity),
  range(quantity),
  ...toleranced(quantity),
]

const range = (quantity: Kind): Form => ({
  entries: [
    [{ label: 'least..most', doc: 'Both limits. The unit can be written once, after the last.', quantity }],
  ],
})

/** `84..108 V`, `max 0.10 mm`, `min 4 mm`, `26 mm +3/-2 mm`. */
export const bandForms = (quantity: Kind): readonly Form[] => [
  range(quantity),
  most(quantity),
  {
    entries: [
      [
        { label: 'min', doc: 'No less than what follows.', choices: ['min'] },
        { label: 'limit', doc: 'The least allowed, with its unit.', quantity },
      ],
    ],
  },
  ...toleranced(quantity),
]
