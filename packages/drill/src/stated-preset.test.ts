/** Free words on the radio: what is stated counts as the preset, and nothing else does. */
import { describe, expect, it } from 'vitest';
import { createDrill } from './drill.ts';
import { boostThroughValve } from './evolutions/boost-through-valve.ts';
import type { RadioPresetKey } from './radio.ts';
import type { PlayedRole } from './role.ts';
import { statedPreset } from './stated-preset.ts';
import { step } from './step.ts';

const attack = 'attack operator';
const crew = 'nozzle crew';
const hydrant = 'hydrant operator';
const lost = 'loss of water';
const going = 'going to tank';
const onTank = 'on tank';

const phrases: [text: string, role: PlayedRole, preset: RadioPresetKey | undefined][] = [
  // Stated.
  ['Loss of water', crew, lost],
  ['LOSS OF WATER!!', crew, lost],
  ['Loss of water! Loss of water on line 2', crew, lost],
  ['Hydrant, loss of water', attack, lost],
  ['Attack to hydrant: we have a loss of water', attack, lost],
  ['We lost water up here', crew, lost],
  ["We've lost our water", crew, lost],
  ['We just lost all water', crew, lost],
  ['I am out of water', attack, lost],
  ["We're out of water.", crew, lost],
  ['No water', crew, lost],
  ['No water!', crew, lost],
  ['No water at the nozzle', crew, lost],
  ['Command, we have no water', crew, lost],
  ['No, we lost water', crew, lost],
  ['Line 2 has no water', crew, lost],
  ['Going to tank', attack, going],
  ["I'm going to tank water", attack, going],
  ['Loss of water, going to tank', attack, going],
  ['Loss of supply: going to tank water.', attack, going],
  ['Hose burst. Switching to tank.', attack, going],
  ['Attack engine is switching to tank water.', attack, going],
  ['I am on tank', attack, onTank],
  ['We are back on tank water now', attack, onTank],
  ['On tank.', attack, onTank],
  ['Copy, we are on the tank', attack, onTank],
  // Denied.
  ['No water needed', crew, undefined],
  ['No loss of water', crew, undefined],
  ['I am not going to tank', attack, undefined],
  ["We haven't lost water", crew, undefined],
  ['Never on tank', attack, undefined],
  ['We are no longer on tank', attack, undefined],
  ['no, water is fine', crew, undefined],
  ['Disregard, loss of water', crew, undefined],
  ['Water is good, none lost', crew, undefined],
  // Asked.
  ['Are you on tank?', hydrant, undefined],
  ['Are you on tank', hydrant, undefined],
  ['Do you have loss of water?', hydrant, undefined],
  ['Attack, on tank?', hydrant, undefined],
  ['Have you lost water', hydrant, undefined],
  ['Is line 2 out of water', attack, undefined],
  ['Going to tank?', hydrant, undefined],
  // Ordered, or asked for.
  ['Stay on tank', hydrant, undefined],
  ['Go to tank', hydrant, undefined],
  ['Attack, on tank', hydrant, undefined],
  ['Attack, go on tank water now', hydrant, undefined],
  ['No water hammer please', attack, undefined],
  ['Send no water until I call', attack, undefined],
  ['Report loss of water', hydrant, undefined],
  ['Keep them on tank', hydrant, undefined],
  ['No water please', attack, undefined],
  // Not yet, or of somebody else.
  ['Ready, no water yet', attack, undefined],
  ['If we lose water, going to tank', attack, undefined],
  ['When I call, go to tank', attack, undefined],
  ['You are on tank', hydrant, undefined],
  ['Attack is on tank', hydrant, undefined],
  ['Tank is full', attack, undefined],
  ['No water on the floor, all dry', crew, undefined],
  ['We could be out of water soon', crew, undefined],
  ['Practice: loss of water', attack, undefined],
  ['Good water', crew, undefined],
  ['', crew, undefined],
];

describe('free words', () => {
  it.each(phrases)('“%s” by the %s', (text, role, preset) => {
    expect(statedPreset(text, role)).toBe(preset);
  });

  it('are at least forty, half of them stating nothing', () => {
    expect(phrases.length).toBeGreaterThanOrEqual(40);
    expect(phrases.filter(([, , preset]) => preset === undefined).length).toBeGreaterThan(20);
  });

  it('go into the log as they are read, and in a drill of the second rules as they were then', () => {
    const said = (rules: number, text: string) => {
      const scene = boostThroughValve.scene();
      scene.settings.rules = rules;
      const drill = createDrill(scene, 1);
      step(drill, [{ role: attack, action: { do: 'radio', message: { text } } }]);
      return [drill.state.radio[0]?.preset, drill.state.said.map(({ preset }) => preset)];
    };
    expect(said(3, 'Send no water until I call')).toEqual([undefined, []]);
    expect(said(3, 'Loss of water')).toEqual([lost, [lost]]);
    expect(said(2, 'Send no water until I call')).toEqual([lost, [lost]]);
  });
});
