// Types whole jobs, with pauses where suggestions open, and Enter at each line end.
import assert from 'node:assert/strict'
import {
  cursorAtColumn,
  lineOfCursor,
  nothingInTheWay,
  openFile,
  press,
  savedText,
  suggestionsWithin,
  type,
} from './person.ts'

const file = 'typing.wright'
const pause = 60

/** A text without its layout: no empty lines, no indentation, single spaces. Where a line ends stays. */
const withoutLayout = (text: string): string =>
  text
    .split('\n')
    .map((line) => line.trim().replaceAll(/\s+/g, ' '))
    .filter((line) => line !== '')
    .join('\n')

/** Opens the empty file that jobs are typed into. */
export const openEmpty = (): Promise<void> => openFile(file, '')

/** Types a job into the empty file, in place of what is there: in the editor must be what was typed. */
export const typeJob = async (text: string): Promise<void> => {
  await press('ControlOrMeta+a', 'Delete')
  const open: Closing[] = []
  for (const line of withoutLayout(text).split('\n')) await typeLine(line, open)
  await press('Escape')
  assert.equal(withoutLayout(await savedText(file)), withoutLayout(text))
}

/** Who writes the closing brace of a block: the editor, which has put it below the cursor, or the typist. */
type Closing = 'editor' | 'typist'

async function typeLine(line: string, open: Closing[]): Promise<void> {
  if (line === '}' && open.pop() === 'editor') {
    // Where help for a value is in view, the arrow chooses in it.
    await nothingInTheWay()
    await press('ArrowDown', 'End')
  } else {
    for (const piece of line.split(/(?<=: )/)) {
      await type(piece)
      await suggestionsWithin(pause)
    }
  }
  // An editor that is behind with its colours puts no brace.
  if (line.endsWith('{')) open.push((await lineOfCursor(line)).endsWith('}') ? 'editor' : 'typist')
  await press('Enter')
}

/** Types a heading, Tab, and a brace: the Tab is white space, it takes no suggestion. */
export const typeHeadingWithTab = async (heading: string): Promise<void> => {
  await press('ControlOrMeta+a', 'Delete')
  await type(heading)
  await suggestionsWithin(pause)
  await press('Tab')
  // VS Code carries out the first Tab of a session later than the keys that follow.
  await cursorAtColumn(heading.length + 3 - (heading.length % 2))
  await type('{')
  assert.equal(withoutLayout(await savedText(file)), `${heading} {}`)
}
