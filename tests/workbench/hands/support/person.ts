// What a person does at the keyboard and the mouse, and what a person sees. Everything goes through the page: real key
// events, real clicks, and text that is read from the screen or from the saved file.
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { folder, page } from './session.ts'

const editor = '.editor-instance .monaco-editor'
const suggestRows = '.suggest-widget.visible .monaco-list-row'

/** The text as it is shown: VS Code paints spaces as no-break spaces. */
const asShown = (text: string): string => text.replaceAll('\u00a0', ' ').trim()

/** Runs a command from the palette by its whole title, "View: Close All Editors" for one. */
export const runCommand = async (title: string): Promise<void> => {
  await page.keyboard.press('F1')
  await page.locator('.quick-input-widget:visible input').waitFor()
  await page.keyboard.insertText(title)
  const row = page.locator('.quick-input-list .monaco-list-row.focused')
  await row.filter({ hasText: title }).waitFor()
  await page.keyboard.press('Enter')
  await row.waitFor({ state: 'hidden' })
}

/** Opens a file of the folder with the cursor at its start. A `text` is written into the file first. */
export const openFile = async (name: string, text?: string): Promise<void> => {
  const file = join(folder, name)
  if (text !== undefined) writeFileSync(file, text)
  await page.keyboard.press('ControlOrMeta+p')
  await page.locator('.quick-input-widget:visible input').waitFor()
  await page.keyboard.insertText(file)
  await page.locator('.quick-input-list .monaco-list-row.focused').filter({ hasText: name }).waitFor()
  await page.keyboard.press('Enter')
  await page.locator('.tab.active').filter({ hasText: name }).waitFor()
  await page.locator(`${editor}.focused`).waitFor()
}

/** Types text key by key; `delay` is the pause after each key in milliseconds. A line end is the Enter key. */
export const type = (text: string, { delay = 0 }: { delay?: number } = {}): Promise<void> =>
  page.keyboard.type(text, { delay })

/** Presses keys one after another: `press('Control+Space', 'ArrowDown', 'Enter')`. */
export const press = async (...keys: readonly string[]): Promise<void> => {
  for (const key of keys) await page.keyboard.press(key)
}

/** Puts the cursor before or behind the first place where the file, as saved, has these words. */
export const goTo = async (
  name: string,
  words: string,
  side: 'before' | 'behind' = 'behind',
): Promise<void> => {
  const text = readFileSync(join(folder, name), 'utf8')
  const at = text.indexOf(words)
  if (at < 0) throw new Error(`"${words}" is not in ${name}.`)
  const lines = text.slice(0, at + (side === 'behind' ? words.length : 0)).split('\n')
  await page.keyboard.press('Control+g')
  await page.locator('.quick-input-widget:visible input').waitFor()
  await page.keyboard.insertText(`${lines.length}:${(lines.at(-1)?.length ?? 0) + 1}`)
  await page.keyboard.press('Enter')
  await page.locator(`${editor}.focused`).waitFor()
}

/** The whole text of a file, once the editor has saved it. */
export const savedText = async (name: string): Promise<string> => {
  await page.keyboard.press('ControlOrMeta+s')
  await page.locator('.tab.active.dirty').waitFor({ state: 'detached' })
  return readFileSync(join(folder, name), 'utf8')
}

/** Takes the fix with these words at the cursor, as soon as it is offered. */
export const quickFix = async (words: string): Promise<void> => {
  const fix = page.locator('.action-widget .monaco-list-row').filter({ hasText: words })
  for (let tries = 1; ; tries++) {
    await press('Control+.')
    try {
      await fix.click({ timeout: 10_000 })
      return
    } catch (error) {
      if (tries === 5) throw error
      await press('Escape')
    }
  }
}

/** Closes all editors; what is not saved is thrown away. */
export const closeEditors = async (): Promise<void> => {
  await press('Escape', 'Escape')
  await runCommand('View: Close All Editors')
  const dontSave = page.locator('.monaco-dialog-box').getByRole('button', { name: "Don't Save" })
  const closed = page.locator('.editor-instance').first()
  await Promise.race([dontSave.waitFor(), closed.waitFor({ state: 'detached' })])
  if (await dontSave.isVisible()) await dontSave.click()
  await closed.waitFor({ state: 'detached' })
}

/** The labels in the list of suggestions, once it is open. Long lists show their first dozen. */
const suggestions = async (): Promise<readonly string[]> => {
  const rows = page.locator(suggestRows)
  await rows.first().waitFor()
  return (await rows.locator('.label-name').allTextContents()).map(asShown)
}

/** Asks for suggestions, again where the list was closed by something else before it could be seen: a person presses the keys once more. */
export const askForSuggestions = async (): Promise<readonly string[]> => {
  for (let times = 0; times < 5; times++) {
    await press('Control+Space')
    if (await suggestionsWithin(5000)) break
  }
  return suggestions()
}

/** Waits for at most so many milliseconds for the list of suggestions; whether it came. */
export const suggestionsWithin = (milliseconds: number): Promise<boolean> =>
  page
    .locator(suggestRows)
    .first()
    .waitFor({ timeout: milliseconds })
    .then(
      () => true,
      () => false,
    )

/** Waits until no list of suggestions and no help for a value is in view. */
export const nothingInTheWay = async (): Promise<void> => {
  for (const widget of ['.suggest-widget.visible', '.parameter-hints-widget'])
    await page.locator(widget).first().waitFor({ state: 'hidden' })
}

/** Waits until a wavy line of this severity is seen in the editor. */
export const squiggle = (severity: 'error' | 'warning' | 'info' | 'hint'): Promise<void> =>
  page.locator(`${editor} .squiggly-${severity}`).first().waitFor()

/** The rows of the Problems panel with these words in a finding, files and findings, once there are any. Long lists show the rows that fit. */
export const problems = async (words: string): Promise<readonly string[]> => {
  await runCommand('Problems: Focus on Problems View')
  await page.locator('.part.panel input[placeholder^="Filter"]').first().fill(words)
  const rows = page.locator('.markers-panel .monaco-list-row')
  // Until the list is filtered, nothing in it is highlighted.
  await rows.locator('.highlight').filter({ hasText: words }).first().waitFor()
  return (await rows.allTextContents()).map(asShown)
}

/** Rests the pointer on the first visible occurrence of a word, until there is a hover; gives what it says. */
export const hover = async (word: string): Promise<string> => {
  const shown = page.locator('.monaco-hover:visible').filter({ hasNotText: 'Loading...' }).first()
  for (let tries = 1; ; tries++) {
    await page.locator(`${editor} .view-line span span`).filter({ hasText: word }).first().hover()
    try {
      await shown.waitFor({ timeout: 5_000 })
      return asShown((await shown.textContent()) ?? '')
    } catch (error) {
      if (tries === 10) throw error
      await page.mouse.move(0, 0)
    }
  }
}

/** The code lenses that are in view, top to bottom as the page has them. */
export const lenses = async (): Promise<readonly string[]> => {
  const shown = page.locator(`${editor} .codelens-decoration:visible`)
  await shown.first().waitFor()
  return (await shown.allTextContents()).map(asShown)
}

/** The lines in view as they are painted, inlay hints included. */
export const linesInView = async (): Promise<readonly string[]> =>
  (await page.locator(`${editor} .view-line:visible`).allTextContents()).map(asShown)

/** The line of the cursor as it is painted, as soon as it has these words. */
export const lineOfCursor = async (words: string): Promise<string> => {
  const painted = await page.waitForFunction(`(() => {
    const cursor = document.querySelector('${editor} .cursors-layer .cursor')?.getBoundingClientRect().top
    const line = [...document.querySelectorAll('${editor} .view-line')].find(
      (one) => Math.abs(one.getBoundingClientRect().top - cursor) < 5,
    )
    const text = line?.textContent.replaceAll('\\u00a0', ' ')
    return text?.includes(${JSON.stringify(words)}) && text
  })()`)
  return asShown(String(await painted.jsonValue()))
}

/** Waits until the status bar says that the cursor is at this column. */
export const cursorAtColumn = (column: number): Promise<void> =>
  page
    .locator('.statusbar-item')
    .getByText(new RegExp(`, Col ${column}$`))
    .waitFor()

/** The inlay hints that are in view: text painted among the words of a line that is not in the file. */
export const hints = async (): Promise<readonly string[]> => {
  const painted = await page.locator(`${editor} .view-line span[class*="dyn-rule"]`).allTextContents()
  return painted.map(asShown).filter((text) => text !== '')
}
