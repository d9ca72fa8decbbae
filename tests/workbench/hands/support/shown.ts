// What the page shows that a job may have put there.
import { page } from './session.ts'

/** A page of ours, or a command of VS Code's own about the characters of a text. */
const known =
  /^(?:(?:vscode-remote|http):\/\/127\.0\.0\.1:\d+\/(?:.*\/)?docs\/[\w/-]+\.md(?:#[\w-]+)?|command:editor\.action\.unicodeHighlight\..*)$/

interface Shown {
  /** Where the links of hovers, lenses, problems and messages lead. */
  readonly links: readonly string[]
  /** Elements that load or run something. */
  readonly loading: readonly string[]
  /** Links that VS Code made of words of a plan. */
  readonly inPlan: readonly string[]
}

export interface Seen {
  readonly ours: number
  readonly foreign: readonly string[]
}

/** Links in view that lead to pages of ours, and everything that we have not written. */
export const seen = async (): Promise<Seen> => {
  const { links, loading, inPlan } = (await page.evaluate(`(() => {
    const places = '.monaco-hover, .codelens-decoration, .markers-panel, .notification-list-item'
    const inside = (what) => [...document.querySelectorAll(places)].flatMap((one) => [...one.querySelectorAll(what)])
    const plan = '.editor-group-container:has(.tab[data-resource-name^="Plan of"])'
    return {
      links: inside('a').map((a) => a.dataset.href ?? a.getAttribute('href') ?? '').filter((to) => to !== ''),
      loading: inside('img, iframe, object, embed, video, audio, form, script').map((one) => one.outerHTML),
      inPlan: [...document.querySelectorAll(plan + ' .detected-link')].map((one) => one.textContent),
    }
  })()`)) as Shown
  const foreign = links.filter((to) => !known.test(to))
  return { ours: links.length - foreign.length, foreign: [...foreign, ...loading, ...inPlan] }
}
