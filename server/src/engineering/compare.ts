/** Numbers held against each other, the last bits of a double aside. */

/** Whether `value` comes up to `limit`, the last bits of a double aside: 35e-6 m² is 35 mm², whatever it went
 * through.
 * @example reaches(0.1 + 0.2, 0.3) // true */
export const reaches = (value: number, limit: number): boolean => value >= limit - 1e-9 * Math.abs(limit)

/** Whether two numbers are the same, the last bits of a double aside.
 * @example same(0.1 + 0.2, 0.3) // true */
export const same = (a: number, b: number): boolean => reaches(a, b) && reaches(b, a)
