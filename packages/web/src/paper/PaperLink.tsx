import type { ReactNode } from 'react';
import { apiUrl } from '../api/request.ts';
import { usePaper } from './paper-choice.ts';

interface PaperLinkProps {
  /** Under `/paper/`, without the ending: `hydrant-card/ID`. */
  document: string;
  children: ReactNode;
}

/** Opens a document to print in a window of its own. */
export function PaperLink({ document, children }: PaperLinkProps) {
  const { paper, units } = usePaper();
  return (
    <a
      className="plain-button link-button"
      href={apiUrl(`/paper/${document}.pdf`, { paper, units })}
      target="_blank"
      rel="noopener"
    >
      {children}
      <span className="hidden-text"> (PDF, opens in a window of its own)</span>
    </a>
  );
}
