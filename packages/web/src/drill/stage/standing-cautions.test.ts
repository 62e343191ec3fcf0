import { createDrill, evolutionOf, type NoticedEvent, step, viewFor } from '@plugside/drill';
import { describe, expect, it } from 'vitest';
import { cautionsNow, lingering } from './standing-cautions.ts';

const scene = evolutionOf('boost through valve')!.scene();
const hydrant = 'hydrant operator' as const;

describe('the caution of the moment', () => {
  it('is none while nothing moves', () => {
    const { state } = createDrill(scene, 1);
    expect(cautionsNow(scene, viewFor(hydrant, scene, state), [])).toEqual([]);
  });

  it('keeps people clear of large hose that fills', () => {
    const drill = createDrill(scene, 1);
    step(drill, [
      {
        role: hydrant,
        action: { do: 'couple', hose: 'suction', end: 'from', port: 'V1.pump-suction' },
      },
      { role: hydrant, action: { do: 'couple', hose: 'suction', end: 'to', port: 'B1.intake1' } },
      { role: hydrant, action: { do: 'set valve', valve: 'V1.handle', opening: 0.3, overS: 20 } },
    ]);
    let told: string | undefined;
    for (let tick = 0; tick < 400 && !told; tick++) {
      step(drill);
      told = cautionsNow(scene, viewFor(hydrant, scene, drill.state), []).find((one) =>
        one.includes('stand clear'),
      );
    }
    expect(told).toMatch(/stand clear/);
  });

  it('asks to shut slowly while a hydrant is being shut', () => {
    const drill = createDrill(scene, 1);
    step(drill, [
      { role: hydrant, action: { do: 'set valve', valve: 'H1.stem', opening: 0, overS: 20 } },
    ]);
    for (let tick = 0; tick < 20; tick++) step(drill);
    expect(cautionsNow(scene, viewFor(hydrant, scene, drill.state), []).join()).toMatch(
      /Shut slowly/,
    );
  });

  it('tells what stands wrong for as long as it does: over a hose, an intake, the main, the pump', () => {
    const drill = createDrill(scene, 1);
    for (let tick = 0; tick < 40; tick++) step(drill);
    const view = viewFor('attack operator', scene, drill.state);
    const reads = (id: string, value: number) => ({
      ...view,
      gauges: view.gauges.map((one) => (one.id === id ? { ...one, value } : one)),
    });
    const told = (seen: typeof view, events: NoticedEvent[] = []) =>
      cautionsNow(scene, seen, events).join(' ');
    // The smallest limit of the hose on the engine, and the benchmark of 20 psi.
    const limits = scene.hoses
      .filter(({ from }) => from.plannedPort.startsWith('A1.discharge'))
      .map(({ limitPsi }) => limitPsi);
    const limitPsi = Math.min(...limits);
    expect(told(reads('A1.discharge', limitPsi + 2))).toContain(`limit of ${limitPsi} psi`);
    expect(told(reads('A1.discharge', limitPsi - 2))).not.toContain('limit of');
    expect(told(reads('A1.intake', 15))).toContain('intake is under 20 psi');
    expect(told(reads('A1.intake', 25))).not.toContain('intake is under');
    const main = { ...viewFor(hydrant, scene, drill.state), mainsUnder: ['H1'] };
    expect(told(main)).toMatch(/main at .* is under 20 psi/);
    const rattling = {
      ...view,
      pumps: view.pumps.map((one) => ({ ...one, sounds: 'rattling' as const })),
    };
    const event = (kind: NoticedEvent['kind'], tick: number): NoticedEvent => ({
      kind,
      level: 'caution',
      piece: 'A1',
      text: '',
      tick,
    });
    expect(told(rattling, [event('air into pump', 3), event('cavitating', 9)])).toMatch(
      /cavitates/,
    );
    expect(told(rattling, [event('cavitating', 3), event('air into pump', 9)])).toMatch(/Air in/);
    expect(told(rattling)).toMatch(/rattles/);
  });

  it('stays a moment after its cause, so that a restless gauge does not tell it twice', () => {
    const first = lingering([], ['a'], 10);
    const dipped = lingering(first, [], 11);
    expect(dipped.map(({ text }) => text)).toEqual(['a']);
    expect(lingering(dipped, ['b', 'a'], 12).map(({ text }) => text)).toEqual(['b', 'a']);
    expect(lingering(dipped, [], 13.5)).toEqual([]);
    // A drill that was begun anew has none of it.
    expect(lingering(first, [], 0)).toEqual([]);
  });
});
