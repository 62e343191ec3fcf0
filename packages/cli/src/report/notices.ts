import { deferral, type Notice } from '@plugside/fireground';
import { bullets, paragraph, sections } from '../output/paragraph.ts';
import type { Terminal } from '../terminal.ts';

/** Cautions, then what the numbers rest on, then the line that ends every answer. */
export function closing({ ink, width }: Terminal, notices: readonly Notice[] = []): string {
  const of = (level: Notice['level']) =>
    notices.filter((notice) => notice.level === level).map(({ text }) => text);
  const cautions = of('caution');
  const facts = of('fact');
  return sections(
    cautions.length > 0 ? `${ink.caution('Cautions')}\n${bullets(cautions, width)}` : '',
    facts.length > 0 ? `${ink.head('What the numbers rest on')}\n${bullets(facts, width)}` : '',
    paragraph(deferral, width),
  );
}
