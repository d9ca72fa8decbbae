import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

// The figure in each `@example` of the engineering floor, run as written. Every module's exports are in scope
// of every example.
const source = new URL('../../server/src/', import.meta.url)
const paths = [
  ...readdirSync(new URL('engineering/', source), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .map((file) => `engineering/${file}`),
  'quantity/uncertainty.ts',
].map((path) => new URL(path, source))

const modules = await Promise.all(paths.map((path) => import(path.href) as Promise<Record<string, unknown>>))
const scope = Object.assign({}, ...modules) as Record<string, unknown>
const run = (code: string): unknown =>
  new Function(...Object.keys(scope), `return (${code})`)(...Object.values(scope))

const examples = paths.flatMap((path) => {
  const text = readFileSync(path, 'utf8')
  return [...text.matchAll(/@example ([\s\S]*?) \/\/ (.*?)\s*(?:\*\/)?$/gm)].map(
    ([, code = '', figure = '']) => ({
      code: code.replaceAll(/\n\s*\* ?/g, ' '),
      figure,
    }),
  )
})

describe('examples in the docstrings', () => {
  it('are there for every exported function', () => {
    const named = new Set(examples.map(({ code }) => /^\w+/.exec(code)?.[0]))
    const functions = Object.entries(scope).filter(([, v]) => typeof v === 'function')
    expect(functions.length).toBeGreaterThan(30)
    expect(functions.map(([name]) => name).filter((name) => !named.has(name))).toEqual([])
  })
  it.each(examples)('$code is $figure', ({ code, figure }) => {
    const found = run(code)
    if (!figure.startsWith('≈')) return expect(found).toEqual(run(figure))
    const wanted = Number(figure.slice(1))
    expect(wanted).not.toBeNaN()
    return expect(Math.abs((found as number) - wanted)).toBeLessThanOrEqual(1e-3 * Math.abs(wanted) + 1e-15)
  })
})
