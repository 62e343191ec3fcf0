/** Which end of a hose goes where, and ports that are as good as one another. */
import { describe, expect, it } from 'vitest';
import type { DrillAction } from './action.ts';
import { createDrill } from './drill.ts';
import { boostThroughValve } from './evolutions/boost-through-valve.ts';
import { judge } from './judge.ts';
import { playedBy } from './played-by.ts';
import { type PlayedRole, playedRoles } from './role.ts';
import type { Drill } from './running-drill.ts';
import { TICKS_PER_S } from './state.ts';
import { step } from './step.ts';
import { allStepsDone, nextStep } from './steps-standing.ts';
import { viewFor } from './view.ts';

const hydrant: PlayedRole = 'hydrant operator';

function act(drill: Drill, action: DrillAction): void {
  const refused = step(drill, [{ role: hydrant, action }]).find(({ kind }) => kind === 'refused');
  expect(refused).toBeUndefined();
}

const wrong = ({ scene, state }: Drill) =>
  judge(scene, state).find(({ key }) => key === 'connections')!.value;

describe('a hose that lies in one post', () => {
  it('is right whichever end goes to which of its two ports, and the guide goes on', () => {
    const ports = ['V1.pump-suction', 'B1.intake1'] as const;
    for (const first of ['from', 'to'] as const)
      for (const order of [ports, [...ports].reverse()]) {
        const drill = createDrill(boostThroughValve.scene(), 1);
        for (const port of order) {
          const hose = drill.state.hoses.find(({ id }) => id === 'suction')!;
          const end = hose[first].port === null ? first : first === 'from' ? 'to' : 'from';
          act(drill, { do: 'couple', hose: 'suction', end, port });
        }
        expect(wrong(drill)).toBe(0);
        expect(nextStep(hydrant, drill.scene, drill.state)?.id).toBe('discharge on engine');
      }
  });

  it('is wrong on a port that belongs to neither end', () => {
    const drill = createDrill(boostThroughValve.scene(), 1);
    act(drill, { do: 'couple', hose: 'suction', end: 'to', port: 'V1.pump-discharge' });
    expect(wrong(drill)).toBe(1);
    expect(nextStep(hydrant, drill.scene, drill.state)?.id).toBe('suction on valve');
  });
});

describe('intake 2 instead of 1', () => {
  it('is as good: every step goes by it, the guide names it, the computer works it', () => {
    const drill = createDrill(boostThroughValve.scene(), 1);
    act(drill, { do: 'couple', hose: 'suction', end: 'from', port: 'V1.pump-suction' });
    act(drill, { do: 'couple', hose: 'suction', end: 'to', port: 'B1.intake2' });
    expect(wrong(drill)).toBe(0);
    for (let n = 0; n < 150 * TICKS_PER_S && !allStepsDone(drill.scene, drill.state); n++) {
      const { next } = viewFor(hydrant, drill.scene, drill.state, { guided: true });
      if (next?.id === 'intake open') {
        expect(next.what).toContain('intake 2');
        expect(next.how).toMatchObject([{ valve: 'B1.intake2' }]);
      }
      step(
        drill,
        playedRoles.flatMap((role) => playedBy(role, drill.scene, drill.state)),
      );
    }
    expect(allStepsDone(drill.scene, drill.state)).toBe(true);
    expect(judge(drill.scene, drill.state).filter(({ met }) => !met)).toEqual([]);
    expect(drill.state.valves.find(({ id }) => id === 'B1.intake1')!.opening).toBe(0);
  });
});

describe('the computer, a hose found on a wrong port', () => {
  it('takes it off and couples it right', () => {
    const drill = createDrill(boostThroughValve.scene(), 1);
    step(drill, [
      {
        role: 'instructor',
        action: {
          do: 'arm fault',
          fault: {
            id: 'w',
            kind: 'wrong port',
            hose: 'suction',
            end: 'from',
            port: 'V1.pump-discharge',
          },
        },
      },
    ]);
    const from = () => drill.state.hoses.find(({ id }) => id === 'suction')!.from.port;
    expect(from()).toBe('V1.pump-discharge');
    // The instructor's hand, not the crew's.
    expect(wrong(drill)).toBe(0);
    for (let n = 0; n < 5 * TICKS_PER_S; n++)
      step(drill, playedBy(hydrant, drill.scene, drill.state));
    const { from: one, to: other } = drill.state.hoses.find(({ id }) => id === 'suction')!;
    expect([one.port, other.port].sort()).toEqual(['B1.intake1', 'V1.pump-suction']);
  });
});
