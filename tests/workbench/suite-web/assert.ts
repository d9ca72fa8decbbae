// What the suite uses of node:assert/strict, for a browser.

const say = (value: unknown): string => JSON.stringify(value, undefined, 2) ?? String(value)

const fail = (message: string): never => {
  throw new Error(message)
}

function ok(value: unknown, message = `${say(value)} is not true`): asserts value {
  if (!value) fail(message)
}

const equal = (actual: unknown, expected: unknown, message = ''): void =>
  ok(Object.is(actual, expected), `${message}: ${say(actual)} is not ${say(expected)}`)

/** Of plain data. */
const deepEqual = (actual: unknown, expected: unknown, message?: string): void =>
  equal(say(actual), say(expected), message)

const match = (text: string, pattern: RegExp, message = ''): void =>
  ok(pattern.test(text), `${message}: ${pattern} is not in ${text}`)

export default { deepEqual, equal, match, ok }
