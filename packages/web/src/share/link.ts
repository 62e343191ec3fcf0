/** A plan inside a link: its text, deflated, in the part of the address that no server sees. */
import { deflateSync, inflateSync, strFromU8, strToU8 } from 'fflate';

const KEY = 'plan=';

function toBase64Url(bytes: Uint8Array): string {
  let binary = '';
  for (const byte of bytes) binary += String.fromCharCode(byte);
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

function fromBase64Url(text: string): Uint8Array {
  const binary = atob(text.replaceAll('-', '+').replaceAll('_', '/'));
  return Uint8Array.from(binary, (char) => char.charCodeAt(0));
}

/** The fragment, with its `#`, that carries a plan's text. */
export function planFragment(planText: string): string {
  return `#${KEY}${toBase64Url(deflateSync(strToU8(planText), { level: 9 }))}`;
}

/**
 * The plan's text in a fragment; null where the fragment carries none.
 * @throws Error in words when it carries one that is damaged
 */
export function planTextIn(fragment: string): string | null {
  const at = fragment.indexOf(KEY);
  if (at < 0) return null;
  try {
    const bytes = inflateSync(fromBase64Url(fragment.slice(at + KEY.length)));
    const text = strFromU8(bytes);
    if (text.trim() === '') throw new Error('empty');
    return text;
  } catch {
    throw new Error(
      'The plan in this link is damaged, perhaps cut short on its way. Ask for the link again, or for the plan file.',
    );
  }
}
