import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { ConfigurationTarget, workspace } from 'vscode'

/** A picture asked for, taken by the launcher as soon as all these selectors are seen in the page. */
export type Picture = { readonly name: string; readonly visible: readonly string[] }

const themes = {
  light: { setting: 'Light Modern', page: '.monaco-workbench.vs' },
  dark: { setting: 'Dark Modern', page: '.monaco-workbench.vs-dark' },
}

/** One picture in a light theme and one in a dark one. A desktop VS Code has no launcher that takes them. */
export const takePictures = async (name: string, visible: readonly string[]): Promise<void> => {
  const folder = process.env['WORKBENCH_PICTURES']
  if (!folder) return
  for (const [theme, { setting, page }] of Object.entries(themes)) {
    await workspace.getConfiguration('workbench').update('colorTheme', setting, ConfigurationTarget.Global)
    const picture: Picture = { name: `${name}-${theme}`, visible: [page, ...visible] }
    console.log(`[shot] ${JSON.stringify(picture)}`)
    while (!existsSync(join(folder, `${picture.name}.png`))) await sleep(50)
  }
}
