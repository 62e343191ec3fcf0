/** What is said on the radio. */
import type { Role } from './role.ts';

/** Most characters of a free message. */
export const mostRadioCharacters = 200;

export interface RadioPreset {
  key: string;
  /** What is said; `{psi}` and `{gpm}` stand for the numbers that go with it. */
  text: string;
  needs?: 'psi' | 'gpm';
}

/** Messages at one touch. */
export const radioPresets = [
  { key: 'ready', text: 'Hooked up: ready for water.' },
  { key: 'send water', text: 'Send water.' },
  { key: 'water coming', text: 'Water coming: stand clear of the hose.' },
  { key: 'water received', text: 'Good water received.' },
  { key: 'pressure wanted', text: 'I want {psi} psi.', needs: 'psi' },
  { key: 'pressure set', text: 'I hold {psi} psi.', needs: 'psi' },
  { key: 'flow', text: 'We flow {gpm} gpm.', needs: 'gpm' },
  { key: 'intake', text: 'My intake stands at {psi} psi.', needs: 'psi' },
  { key: 'hooked up', text: 'Hooked up and ready to boost.' },
  { key: 'boosting', text: 'Boosting now: watch your intake.' },
  { key: 'boost made', text: 'Boost is made.' },
  { key: 'on tank', text: 'I am on tank water.' },
  { key: 'on hydrant', text: 'I am on hydrant water.' },
  { key: 'shutting down', text: 'Shutting down: from the fire end first.' },
  { key: 'hose burst', text: 'Burst hose: shut down.' },
  { key: 'stop', text: 'Stop. Stop. Stop.' },
  { key: 'copied', text: 'Copied.' },
  { key: 'say again', text: 'Say again.' },
] as const satisfies readonly RadioPreset[];

export type RadioPresetKey = (typeof radioPresets)[number]['key'];

export type RadioMessage =
  | { preset: RadioPresetKey /** [0 … 500] */; psi?: number /** [0 … 10000] */; gpm?: number }
  | { text: string };

/** A message as it stands in the log that everyone hears. */
export interface RadioEntry {
  tick: number;
  from: Role;
  /** Left out: everyone. */
  to?: Role;
  text: string;
  preset?: RadioPresetKey;
  psi?: number;
  gpm?: number;
}

/** The words of a message, numbers filled in. */
export function radioText(message: RadioMessage): string {
  if ('text' in message) return message.text;
  const preset = radioPresets.find((one) => one.key === message.preset);
  return (preset?.text ?? '')
    .replace('{psi}', String(message.psi ?? ''))
    .replace('{gpm}', String(message.gpm ?? ''));
}
