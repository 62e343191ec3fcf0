import type { HoseEndView, StreamView } from '@plugside/drill';

export const streamWords: Readonly<Record<StreamView['stream'], string>> = {
  shut: 'Bale shut',
  none: 'No stream',
  weak: 'Weak stream',
  full: 'Full stream',
  'hard to hold': 'Full stream, hard to hold',
};

/** How a line feels in the hand and under the boot. */
export const lineWords: Readonly<Record<HoseEndView['looks'], string>> = {
  flat: 'line flat',
  filling: 'line fills',
  soft: 'line soft',
  hard: 'line hard',
  burst: 'line burst',
};

/** Whether a crew has less or more than it should: an open nozzle whose line waits for water has not. */
export function isStreamShort(
  stream: StreamView['stream'],
  line: HoseEndView['looks'] | undefined,
): boolean {
  if (stream === 'none') return line !== undefined && line !== 'flat' && line !== 'filling';
  return stream === 'weak' || stream === 'hard to hold';
}
