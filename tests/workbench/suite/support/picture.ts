import { ConfigurationTarget, Uri, workspace } from 'vscode'

/** A picture asked for, taken by the launcher as soon as all these selectors are seen in the page. */
export type Picture = { readonly name: string; readonly visible: readonly string[] }

const themes = {
  light: { setting: 'Light Modern', page: '.monaco-workbench.vs' },
  dark: { setting: 'Dark Modern', page: '.monaco-workbench.vs-dark' },
  contrast: { setting: 'Default High Contrast', page: '.monaco-workbench.hc-black' },
}

const taken = (picture: Uri): Promise<boolean> =>
  Promise.resolve(workspace.fs.stat(picture)).then(
    ({ size }) => size > 0,
    () => false,
  )

/** One picture in each theme the launcher asks for; `show` brings up what a change of theme may close, again
 * when it is not seen for a while. A desktop VS Code has no launcher that takes them. */
export const takePictures = async (
  name: string,
  visible: readonly string[],
  show: () => Thenable<unknown> = async () => {},
): Promise<void> => {
  const suite = workspace.getConfiguration('workbenchSuite')
  const pictures = suite.get<string>('pictures')
  const folder = workspace.workspaceFolders?.[0]?.uri
  if (!pictures || !folder) return
  for (const theme of suite.get<(keyof typeof themes)[]>('themes', [])) {
    const { setting, page } = themes[theme]
    await workspace.getConfiguration('workbench').update('colorTheme', setting, ConfigurationTarget.Global)
    await show()
    const picture: Picture = { name: `${name}-${theme}`, visible: [page, ...visible] }
    console.log(`[shot] ${JSON.stringify(picture)}`)
    const file = Uri.joinPath(folder.with({ path: pictures }), `${picture.name}.png`)
    for (let looks = 1; !(await taken(file)); looks++) {
      await new Promise((done) => setTimeout(done, 50))
      if (looks % 60 === 0) await show()
    }
  }
}
