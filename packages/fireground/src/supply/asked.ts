/** What ways are asked besides the demand: flow to spare, and pressure for the lines at the fire. */
import type { FieldRange } from '../plan/written/ranges.ts';
import { formatNumber } from '../units/format-quantity.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { sayIn } from '../words/say.ts';
import { firePressureOf } from './fire-pumps.ts';
import { marginWantedGpm, usualMarginShare } from './rank.ts';
import type { Situation } from './situation.ts';

/** Share of the demand that may be wanted to spare. */
export const marginShareRange = { least: 0, greatest: 2 } as const;

/** Discharge pressure that lines at the fire may need of their pump. */
export const fireLinePdpRange = {
  quantity: 'pressure',
  least: 50,
  greatest: 400,
} as const satisfies FieldRange;

/** What a situation asks besides its demand, with the usual where it gives none. */
export interface Asked {
  /** Share of the demand that a way should have to spare, and as a flow [gpm]. */
  marginShare: number;
  marginGpm: number;
  /** Nobody gave it: the usual one. */
  usualMargin: boolean;
  /** Discharge pressure that the lines at the fire need of their pump [psi]. */
  fireLinePdpPsi: number;
  usualPdp: boolean;
}

type Asking = Pick<Situation, 'demandGpm' | 'marginShare' | 'fireLinePdpPsi' | 'department'>;

export function askedOf(situation: Asking): Asked {
  return {
    marginShare: situation.marginShare ?? usualMarginShare,
    marginGpm: marginWantedGpm(situation),
    usualMargin: situation.marginShare === undefined,
    fireLinePdpPsi: firePressureOf(situation).pdpPsi,
    usualPdp: situation.fireLinePdpPsi === undefined,
  };
}

/** "10 %", "12.5 %" */
export function shareText(share: number): string {
  const percent = share * 100;
  const whole = Math.abs(percent - Math.round(percent)) < 0.05;
  return `${formatNumber(percent, whole ? 0 : 1)} %`;
}

/** "10 % of the demand (100 gpm) is wanted to spare: the default. The lines at the fire …" */
export function askedText(asked: Asked, units: UnitSystem): string {
  const say = sayIn(units);
  const whose = (usual: boolean) => (usual ? 'the default' : 'as given');
  const flow = say.full(asked.marginGpm, 'flow');
  const pdp = say.full(asked.fireLinePdpPsi, 'pressure');
  return [
    `${shareText(asked.marginShare)} of the demand (${flow}) is wanted to spare: ${whose(asked.usualMargin)}.`,
    `The lines at the fire need ${pdp} at the discharge of their pump: ${whose(asked.usualPdp)}.`,
  ].join(' ');
}
