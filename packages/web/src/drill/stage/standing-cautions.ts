/** Cautions that the moment asks for, from what a role sees. */
import type { DrillScene, DrillView, NoticedEvent, PumpView } from '@plugside/drill';
import { pieceName } from '@plugside/drill';
import { splitPortRef } from '@plugside/fireground';
import { isLargeHose } from '../words.ts';
import { warnsOf } from './gauge-warns.ts';

/** A caution stays in sight for so long after its cause [s]: gauges are restless. Ours. */
const LINGERS_S = 3;

/** The cautions that matter now, the gravest first. Their words do not change while they last. */
export function cautionsNow(
  scene: DrillScene,
  view: DrillView,
  events: readonly NoticedEvent[],
): string[] {
  const told: string[] = [];
  if (view.hoseEnds.some(({ looks }) => looks === 'burst'))
    told.push('A hose has burst: stand clear, shut it down from where the water comes.');
  for (const id of view.mainsUnder ?? [])
    told.push(
      `The main at ${pieceName(scene, id)} is under ${scene.benchmarks.mainPsi} psi: ease back.`,
    );
  if (view.pumps.some(({ sounds }) => sounds === 'no water'))
    told.push('The pump runs dry: take it out of gear or give it water.');
  for (const pump of view.pumps) if (pump.sounds === 'rattling') told.push(rattles(pump, events));
  told.push(...gaugeCautions(scene, view));
  const large = (hose: string) => {
    const found = scene.hoses.find(({ id }) => id === hose);
    return found !== undefined && isLargeHose(found);
  };
  if (
    view.hoseEnds.some(
      ({ hose, port, looks }) => looks === 'filling' && port !== null && large(hose),
    )
  )
    told.push('Large hose is filling: stand clear of it, twists out, couplings locked.');
  const shuts = view.valves.find(
    ({ kind, target, opening, id }) =>
      target < opening - 0.02 &&
      ['hydrant stem', 'hydrant gate', 'intake', 'discharge', 'assist handle'].includes(kind) &&
      view.hoseEnds.every(({ port, looks }) => port !== id || looks === 'hard'),
  );
  if (shuts) told.push('Shut slowly: moving water that is stopped hits back (water hammer).');
  return told;
}

/** What a pump rattles of, by what was last told of it. */
function rattles({ rigId, label }: PumpView, events: readonly NoticedEvent[]): string {
  const last = events.findLast(
    ({ kind, piece }) =>
      piece === rigId &&
      (kind === 'cavitating' || kind === 'air into pump' || kind === 'air sucked in'),
  );
  if (last === undefined)
    return `${label} rattles: air in it, or it wants more water than it gets.`;
  return last.kind === 'cavitating'
    ? `${label} cavitates: lower its pressure or take a line off.`
    : `Air in the pump of ${label}: its pressure dips until that is through.`;
}

/** Discharges over the limit of their hose, and intakes under what they should keep. */
function gaugeCautions(scene: DrillScene, view: DrillView): string[] {
  const over: string[] = [];
  const under: string[] = [];
  for (const gauge of view.gauges) {
    const limit = warnsOf(scene, view, gauge);
    const { pieceId, port } = splitPortRef(gauge.id);
    const name = pieceName(scene, pieceId);
    if (limit?.sense === 'greatest')
      over.push(`${name} is over the hose limit of ${limit.value} psi: lower it.`);
    else if (limit && port === 'intake')
      under.push(`${name}’s intake is under ${limit.value} psi: ask less of it, or bring more.`);
  }
  return [...over, ...under];
}

/** A caution, and when its cause was last there [s of the drill]. */
export interface KeptCaution {
  text: string;
  lastS: number;
}

/** What is shown: all that matters now, and what did until a moment ago, which is not told again. */
export function lingering(
  kept: readonly KeptCaution[],
  now: readonly string[],
  timeS: number,
): KeptCaution[] {
  const gone = kept.filter(
    ({ text, lastS }) => !now.includes(text) && lastS <= timeS && timeS - lastS < LINGERS_S,
  );
  return [...now.map((text) => ({ text, lastS: timeS })), ...gone];
}
