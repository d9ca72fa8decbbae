import { stringify } from 'csv-stringify/sync'

/** RFC 4180. A text that a spreadsheet would take for a formula is marked as text. The mark at the beginning says that it is UTF-8: spreadsheets do not
 * look. */
export const csvOf = (rows: readonly (readonly (string | number | null | undefined)[])[]): string =>
  stringify(
    rows.map((row) => [...row]),
    {
      bom: true,
      record_delimiter: 'windows',
      escape_formulas: true,
      // A negative number is no formula.
      cast: { number: (value) => ({ value: String(value), escape_formulas: false }) },
    },
  )
