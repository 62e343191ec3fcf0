import { expect, it } from 'vitest';
import { rankingOf } from './adjustments.ts';
import { usualRanking } from './rank.ts';
import { otherMainsText, rankingText } from './ranking-text.ts';

it('says in what order ways are ranked and what counts as alike', () => {
  expect(rankingText(usualRanking, 'us')).toBe(
    'Ranked: ways that bring enough, with what is wanted to spare, first; of those the soonest with all of its water, then the fewest rigs, then the least hose, then the most to spare. Under a minute or 100 ft of hose apart counts as alike.',
  );
  expect(rankingText(rankingOf({ first: 'margin' }), 'us')).toMatch(
    /; of those the most to spare, then the soonest/,
  );
});

it('tells what a way brings on one main or on two, where that differs', () => {
  expect(otherMainsText({ basis: 'not known', shared: 922.4, apart: 1243 }, 'us')).toBe(
    '922 if one main',
  );
  expect(otherMainsText({ basis: 'shared', shared: 922.4, apart: 1243 }, 'us')).toBe(
    '1,243 were it two mains',
  );
  expect(otherMainsText({ basis: 'not known', shared: 996, apart: 1000 }, 'us')).toBeUndefined();
  expect(otherMainsText(undefined, 'us')).toBeUndefined();
  // 1 gpm (US) is 3.785412 L/min (NIST SP 811): 264.172 gpm are 1,000.
  expect(otherMainsText({ basis: 'not known', shared: 264.172, apart: 400 }, 'si')).toBe(
    '1,000 if one main',
  );
});
