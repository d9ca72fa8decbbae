/** What the server takes from where it runs: Node, or a browser. What a browser has to ask for comes later, as a promise. */
export interface Host {
  /** Text of a file inside the folder `root`; undefined when there is none, or when it turns out to lie outside. Both are URIs. */
  readonly read: (uri: string, root: string) => string | undefined | Promise<string | undefined>
  /** URIs of the job files below the folder `root`, without those in `node_modules` or in folders whose name begins with a dot. */
  readonly list: (root: string) => readonly string[] | Promise<readonly string[]>
  /** Today, `YYYY-MM-DD`. */
  readonly today: () => string
  /** Where the pages of the checks stand, ending in `/`, when they stand anywhere. */
  readonly docs?: string
}
