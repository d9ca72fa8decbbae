const identifier = (id: string): string =>
  id.replace(/[/-](\w)/g, (_, letter: string) => letter.toUpperCase())

/** Source of `checks/index.ts`: one import a check, in order of path. */
export function checksIndex(ids: readonly string[]): string {
  const imports = [
    ...ids.map((id) => ({ path: `./${id}.ts`, what: identifier(id) })),
    { path: './check.ts', what: 'type { Check }' },
  ].sort((a, b) => (a.path < b.path ? -1 : 1))
  return `// Made by \`npm run generate\` from the files beside it.
${imports.map(({ path, what }) => `import ${what} from '${path}'`).join('\n')}

/** Every check, by area and name. */
export const allChecks: readonly Check[] = [
${ids.map((id) => `  ${identifier(id)},`).join('\n')}
]
`
}
