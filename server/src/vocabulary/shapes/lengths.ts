import { z } from 'zod'
import { notThis, type Placed, type Shape } from '../shape.ts'

const wanted = 'lengths with commas between them: `0.05 mm, 0.1 mm, 0.2 mm`'

/** A stock of lengths, such as shims: `0.05 mm, 0.1 mm, 0.2 mm`. */
export const lengths: Shape<readonly Placed<{ readonly value: number }>[]> = {
  words: wanted,
  quantity: 'length',
  allowed: { low: 1e-6, high: 0.1 },
  schema: z
    .array(z.looseObject({ value: z.number().min(1e-6).max(0.1) }))
    .min(1)
    .max(40) as unknown as z.ZodType<readonly Placed<{ readonly value: number }>[]>,
  read: (entries, reader) => {
    if (entries.some((entry) => entry.parts.length !== 1)) return notThis(entries, reader, wanted)
    const values = reader.amounts(
      entries.flatMap((entry) => entry.parts),
      'length',
    )
    const list = values.flatMap((value, i) =>
      value === undefined ? [] : [{ value, span: entries[i]?.span ?? { start: 0, end: 0 } }],
    )
    return list.length === entries.length ? list : undefined
  },
}
