/** A burst hose that is put right: its crew lays a new length, which takes its time and is empty. */
import type { DrillEvent } from './event.ts';
import { onFineGrid } from './grid.ts';
import { waterIn } from './hose-front.ts';
import { pours } from './live-ports.ts';
import type { Drill } from './running-drill.ts';
import { TICKS_PER_S } from './state.ts';
import { hoseWords } from './words/piece-words.ts';

/** A section is taken out and a new one laid in so long [s]; ours. */
export const REPLACED_AFTER_S = 60;

/** Begins the work on a burst hose. */
export function replaceHose({ state }: Drill, id: string): void {
  const hose = state.hoses.find((one) => one.id === id);
  if (hose?.phase === 'burst') hose.newAtTick = state.tick + REPLACED_AFTER_S * TICKS_PER_S;
}

/** Lays in the new lengths that are due; one that still pours waits until it is shut down. */
export function layNewHose(drill: Drill): DrillEvent[] {
  const { scene, state } = drill;
  const events: DrillEvent[] = [];
  state.hoses.forEach((hose, at) => {
    if (hose.newAtTick === undefined || state.tick < hose.newAtTick) return;
    if (pours(hose)) {
      if (state.tick === hose.newAtTick)
        events.push({
          kind: 'hose waits',
          level: 'caution',
          piece: hose.id,
          text: `The new length of ${hoseWords(scene, hose.id)} lies ready, but water still pours: shut it down first.`,
        });
      return;
    }
    const left = waterIn(hose);
    state.water.hoseGal = onFineGrid(state.water.hoseGal - left);
    state.water.wasteGal = onFineGrid(state.water.wasteGal + left);
    for (const end of [hose.from, hose.to]) {
      end.waterGal = 0;
      end.gpm = 0;
    }
    hose.phase = 'filling';
    hose.airGal = onFineGrid(scene.hoses[at]!.capacityGal);
    hose.airPsi = 0;
    delete hose.newAtTick;
    drill.stale = true;
    events.push({
      kind: 'hose replaced',
      level: 'fact',
      piece: hose.id,
      text: `${hoseWords(scene, hose.id)} has a new length: it is empty, and is to be charged again.`,
    });
  });
  return events;
}
