/** A document as it reads in a marketplace, where nothing lies beside it: pictures of the repository are left out, and of links into it the words
 * stay. */
export const withoutRelativeLinks = (markdown: string): string =>
  markdown
    .replaceAll(/^!\[[^\]]*\]\((?!https:)[^)]*\)\n+/gm, '')
    .replaceAll(/\[([^\]]*)\]\((?!https:|#)[^)]*\)/g, '$1')
