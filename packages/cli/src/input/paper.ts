/** What prints: loaded only here, since it brings fonts and a PDF library along. */
export type Paper = typeof import('@plugside/paper');

export const loadPaper = (): Promise<Paper> => import('@plugside/paper');
