import type { NozzleMake } from '@plugside/fireground';
import type { Units } from './use-units.ts';

/** A nozzle in the reader's units: "1⅛ in smooth bore at 50 psi", "150 gpm fog at 100 psi". */
export function nozzleWords(make: NozzleMake, units: Units): string {
  const at = `at ${units.text(make.ratedPsi, 'pressure')}`;
  switch (make.kind) {
    case 'smooth-bore':
      return `${units.text(make.tipIn, 'diameter')} smooth bore ${at}`;
    case 'fog':
      return `${units.text(make.ratedGpm, 'flow')} fog ${at}`;
    case 'selectable':
      return `selectable fog, ${units.text(make.selectedGpm, 'flow')} ${at}`;
    case 'automatic':
      return `automatic fog, ${units.number(make.leastGpm, 'flow')} to ${units.text(make.greatestGpm, 'flow')} ${at}`;
  }
}
