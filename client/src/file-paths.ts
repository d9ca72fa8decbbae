/** What these rules need to know of a URI. */
type Location = { readonly scheme: string; readonly authority: string; readonly path: string }

/** The names that lead from the folder down to the file; undefined when the file does not lie below it. */
export const stepsBelow = (folder: Location, file: Location): readonly string[] | undefined => {
  if (file.scheme !== folder.scheme || file.authority !== folder.authority) return undefined
  const base = folder.path.replace(/\/*$/, '/')
  if (!file.path.startsWith(base)) return undefined
  const steps = file.path.slice(base.length).split('/')
  return steps.some((step) => ['', '.', '..'].includes(step) || step.includes('\\')) ? undefined : steps
}

/** Whether job files are looked for in a folder of this name. */
export const isSearched = (name: string): boolean => name !== 'node_modules' && !name.startsWith('.')

export const isJobFile = (name: string): boolean => name.endsWith('.wright')

/** A file name made of what a thing is called: `Launch 07` becomes `launch-07`. */
export const fileNameFor = (title: string): string =>
  title
    .normalize('NFC')
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{M}\p{N}]+/gu, '-')
    .replaceAll(/^-|-$/g, '')
    .slice(0, 60) || 'job'

/** The first of `launch-07.wright`, `launch-07-2.wright`, … that is not taken yet. */
export async function freeName(name: string, isTaken: (file: string) => Promise<boolean>): Promise<string> {
  for (let number = 1; ; number++) {
    const file = `${name}${number === 1 ? '' : `-${number}`}.wright`
    if (!(await isTaken(file))) return file
  }
}
