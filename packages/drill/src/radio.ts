/** What is said on the radio. */
import { type PlayedRole, type Role, relayRoles } from './role.ts';

/** Most characters of a free message. */
export const mostRadioCharacters = 200;

export interface RadioPreset {
  key: string;
  /** What is said; `{psi}` and `{gpm}` stand for the numbers that go with it. */
  text: string;
  needs?: 'psi' | 'gpm';
  /** Who says it; left out: anyone may. */
  by?: readonly PlayedRole[];
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
  { key: 'second line in', text: 'Second suction line is in.', by: ['hydrant operator'] },
  {
    key: 'more needed',
    text: 'I need {psi} psi more.',
    needs: 'psi',
    by: ['attack operator', 'nozzle crew', ...relayRoles],
  },
  {
    key: 'more available',
    text: 'I have {psi} psi more available.',
    needs: 'psi',
    by: ['hydrant operator', ...relayRoles],
  },
  {
    key: 'no more',
    text: 'I can give no more.',
    by: ['hydrant operator', ...relayRoles],
  },
  {
    key: 'loss of water',
    text: 'Loss of water.',
    by: ['attack operator', 'nozzle crew', ...relayRoles],
  },
  {
    key: 'going to tank',
    text: 'Loss of supply: going to tank water.',
    by: ['attack operator', ...relayRoles],
  },
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

/**
 * The preset that free words said by the second rules, kept for drills of then (today: `statedPreset`): "loss of water", "lost water", "out of water", "no water";
 * "going to tank", "go to tank", "on tank". Where both are there, the tank: it says both.
 */
export function presetInWords(text: string): RadioPresetKey | undefined {
  const words = text.toLowerCase().replace(/[^a-z]+/g, ' ');
  if (/\b(not|never|don t|isn t)\b/.test(words)) return undefined;
  if (/\b(going|go|switching|gone) (on )?(to )?(the )?tank\b/.test(words)) return 'going to tank';
  if (/\bon (the )?tank( water)?\b/.test(words)) return 'on tank';
  if (/\b(loss of|lost|out of|no) water\b/.test(words)) return 'loss of water';
  return undefined;
}

/** What else counts where a message is awaited: it says as much, or more. */
const saysAsMuch: Partial<Record<RadioPresetKey, readonly RadioPresetKey[]>> = {
  'on tank': ['going to tank'],
  'pressure wanted': ['more needed'],
  intake: ['more available'],
  'hose burst': ['loss of water', 'going to tank'],
};

/** Whether a role has said a message, or one that says as much. */
export function hasSaid(
  said: readonly { role: Role; preset: RadioPresetKey }[],
  role: Role,
  preset: string,
): boolean {
  const also = saysAsMuch[preset as RadioPresetKey] ?? [];
  return said.some(
    (one) => one.role === role && (one.preset === preset || also.includes(one.preset)),
  );
}
