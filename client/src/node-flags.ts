/** A keystroke leaves little behind: with a small nursery the server holds a third less memory, and stops for shorter to clear it
 * (docs/performance.md). */
export const nodeFlags: readonly string[] = ['--max-semi-space-size=4']
