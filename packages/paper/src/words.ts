/** What the documents call things. */
import {
  formatFraction,
  type NozzleMake,
  nozzleRatedGpm,
  type Origin,
  type UnitSystem,
} from '@plugside/fireground';
import { figuresIn } from './sheet/figures.ts';

/** "Fog, 100 psi"; "15/16 in tip, 50 psi". */
export function nozzleWords(make: NozzleMake, units: UnitSystem): string {
  const { full } = figuresIn(units);
  const at = full(make.ratedPsi, 'pressure');
  switch (make.kind) {
    case 'smooth-bore':
      return `${units === 'us' ? `${formatFraction(make.tipIn)} in` : full(make.tipIn, 'diameter')} tip, ${at}`;
    case 'fog':
      return `Fog, ${at}`;
    case 'selectable':
      return `Selectable fog, ${at}`;
    case 'automatic':
      return `Automatic fog, ${at}`;
  }
}

/** Flow that a nozzle of a make is rated for [gpm]; an automatic one's greatest. */
export function makeGpm(make: NozzleMake): number {
  return nozzleRatedGpm({ id: 'N', elevationFt: 0, open: true, use: 'hand line', ...make });
}

/** "Own hose test, 5 readings, 2025-05-20" */
export function originWords({ text, date }: Origin): string {
  return date ? `${text}, ${date}` : text;
}

/** The text with a capital at its beginning. */
export function capital(text: string): string {
  return `${text[0]?.toUpperCase() ?? ''}${text.slice(1)}`;
}
