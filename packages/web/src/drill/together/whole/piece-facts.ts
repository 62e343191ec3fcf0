/** What stands in a piece's box in the drawing of the whole: the truth, not its gauges. */
import {
  type DrillScene,
  type DrillTruth,
  type DrillView,
  isVacuum,
  vacuumInHg,
} from '@plugside/drill';
import { kindOf, pieceOf } from '@plugside/fireground';
import type { Units } from '../../../editing/use-units.ts';

export interface PieceFact {
  label: string;
  text: string;
  /** Out of bounds. */
  warns?: boolean;
}

const conditionWords: Readonly<Record<DrillTruth['pumps'][number]['condition'], string>> = {
  'out of gear': 'out of gear',
  pumping: 'pumping',
  'at capability': 'at its limit',
  passing: 'passing water',
  cavitating: 'cavitating',
  'no flow': 'no flow',
  'lost prime': 'lost its prime',
  dead: 'engine dead',
};

const wrong: ReadonlySet<string> = new Set(['cavitating', 'lost prime', 'dead']);

/** As short as the box is narrow: `46 psi`, `12 inHg vac`. */
function intakeText(psi: number, units: Units): string {
  return isVacuum(psi)
    ? `${units.text(vacuumInHg(psi), 'vacuum')} vac`
    : units.text(Math.max(0, psi), 'pressure');
}

/**
 * Pressures, flows and settings of a piece.
 * @param leastPsi what an intake should not stand under
 */
export function pieceFacts(
  id: string,
  view: DrillView,
  leastPsi: number,
  units: Units,
): PieceFact[] {
  const state = view.truth?.state;
  if (!state) return [];
  const psi = (value: number) => units.text(value, 'pressure');
  const gpm = (value: number) => units.text(Math.abs(value) < 0.5 ? 0 : value, 'flow');
  const opening = (valve: string) => state.valves.find((one) => one.id === valve)?.opening ?? 0;
  const hydrant = state.hydrants.find((one) => one.id === id);
  if (hydrant) {
    return [
      { label: 'main', text: psi(hydrant.mainPsi) },
      { label: 'flow', text: gpm(hydrant.flowGpm) },
      { label: 'stem', text: openingText(opening(`${id}.stem`)) },
    ];
  }
  const valve = state.assistValves.find((one) => one.id === id);
  if (valve) {
    return [
      { label: 'supply', text: psi(valve.supplyPsi) },
      { label: 'clapper', text: valve.clapper, warns: valve.clapper.startsWith('stuck') },
      { label: 'handle', text: handleText(opening(`${id}.handle`)) },
    ];
  }
  const pump = state.pumps.find((one) => one.rigId === id);
  if (pump) {
    // Its gauge has no least where it lifts from tank or open water: a little vacuum is right there.
    const held = view.gauges.some(
      ({ id: gauge, least }) => gauge === `${id}.intake` && least !== undefined,
    );
    const fed = held && pump.flowGpm > 5 && pump.intakePsi < leastPsi;
    const tank = state.tanks.find((one) => one.rigId === id);
    return [
      { label: 'intake', text: intakeText(pump.intakePsi, units), warns: fed },
      { label: 'discharge', text: psi(pump.dischargePsi) },
      { label: 'flow', text: gpm(pump.flowGpm) },
      ...(tank ? [{ label: 'tank', text: units.text(tank.gal, 'volume') }] : []),
      {
        label: 'pump',
        text: conditionWords[pump.condition],
        warns: wrong.has(pump.condition),
      },
    ];
  }
  const nozzle = state.nozzles.find((one) => one.id === id);
  if (nozzle) {
    const bale = opening(`${id}.bale`);
    return [
      { label: 'pressure', text: psi(nozzle.pressurePsi) },
      { label: 'flow', text: gpm(nozzle.flowGpm), warns: bale > 0.05 && nozzle.flowGpm < 1 },
      { label: 'bale', text: openingText(bale) },
    ];
  }
  return [];
}

function openingText(opening: number): string {
  if (opening < 0.005) return 'shut';
  return opening > 0.995 ? 'open' : `${Math.round(opening * 100)} %`;
}

function handleText(opening: number): string {
  if (opening < 0.005) return 'hydrant';
  return opening > 0.995 ? 'boost' : `${Math.round(opening * 100)} % to boost`;
}

const NAME_PX = 34;
const FACT_PX = 18;

/** Height of a piece's box, for all the facts it will ever have: nothing jumps as the drill runs [px]. */
export function boxHeight({ plan, tanks }: DrillScene, id: string): number {
  const piece = pieceOf(plan, id);
  const kind = piece && kindOf(piece);
  if (kind === 'rig') {
    const hasTank = tanks.some(({ rigId }) => rigId === id);
    return NAME_PX + FACT_PX * (hasTank ? 5 : 4);
  }
  if (kind === 'hydrant' || kind === 'nozzle') return NAME_PX + FACT_PX * 3;
  return NAME_PX + FACT_PX * (kind === 'assist-valve' ? 4 : 1);
}
