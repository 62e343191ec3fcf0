import type { Plan } from '../plan/plan.ts';
import { addAttackLines } from './attack-lines.ts';
import { boostedAtHydrant } from './boosted-at-hydrant.ts';
import { addManifoldLines, addWyedLines } from './branched-lines.ts';
import { draftSupply } from './draft-supply.ts';
import { dualLines } from './dual-lines.ts';
import { sprinklerSupply, standpipeSupply } from './fixed-systems.ts';
import { forwardLay } from './forward-lay.ts';
import { addMasterStream } from './master-stream.ts';
import { relay } from './relay.ts';
import { reverseLay } from './reverse-lay.ts';
import { twoHydrants } from './two-hydrants.ts';

export interface Pattern {
  id: string;
  /** For people, one line. */
  label: string;
  /** A plan with the usual values and made-up hydrants, marked as invented. */
  make: () => Plan;
}

/** 100 psi at the nozzle and 70 lost in 200 ft of 1¾ in at 150 gpm. */
const handLines = { attack: { pdpPsi: 170 } };

const usual = (plan: Plan, rigId = 'A1'): Plan => ({
  ...addAttackLines(plan, rigId, [{}, {}]),
  invented: true,
});

/** Every pattern ready to use, each with hand lines or what it feeds. */
export const patternList: readonly Pattern[] = [
  {
    id: 'forward-lay',
    label: 'Forward lay: hydrant to fire on hydrant pressure',
    make: () => usual(forwardLay(handLines)),
  },
  {
    id: 'reverse-lay',
    label: 'Reverse lay: an engine at the hydrant pumps the line',
    make: () => usual(reverseLay(handLines)),
  },
  {
    id: 'boosted-at-hydrant',
    label: 'Boosted at the hydrant through an assist valve',
    make: () => usual(boostedAtHydrant(handLines)),
  },
  {
    id: 'boosted-with-side-lines',
    label: 'Boosted, with lines from the side outlets too',
    make: () =>
      usual(
        boostedAtHydrant({ ...handLines, booster: { sideLines: [{ hose: '3' }, { hose: '3' }] } }),
      ),
  },
  {
    id: 'relay',
    label: 'Relay of three pumps',
    make: () => usual(relay({ attackPdpPsi: 170 }), 'P3'),
  },
  {
    id: 'two-hydrants',
    label: 'Two hydrants into one engine',
    make: () => usual(twoHydrants(handLines)),
  },
  {
    id: 'dual-lines',
    label: 'Two lines side by side from one hydrant',
    make: () => usual(dualLines(handLines)),
  },
  {
    id: 'wyed-lines',
    label: 'Two hand lines from a wye',
    make: () => ({
      // Shorter lines than usual: the leader has its own loss.
      ...addWyedLines(forwardLay({ attack: { pdpPsi: 180 } }), 'A1', {
        lines: [{ lengthFt: 100 }, { lengthFt: 100 }],
      }),
      invented: true,
    }),
  },
  {
    id: 'manifold',
    label: 'Hand lines from a manifold',
    make: () => ({
      ...addManifoldLines(forwardLay({ attack: { pdpPsi: 175 } }), 'A1', { lines: [{}, {}, {}] }),
      invented: true,
    }),
  },
  {
    id: 'master-stream',
    label: 'Master stream from a boosted supply',
    make: () => ({
      ...addMasterStream(boostedAtHydrant({ attack: { pdpPsi: 100 } }), 'A1'),
      invented: true,
    }),
  },
  {
    id: 'standpipe',
    label: 'Standpipe with a hand line on an upper floor',
    make: () => ({ ...standpipeSupply({ attack: { pdpPsi: 100 } }), invented: true }),
  },
  {
    id: 'sprinkler',
    label: 'Sprinkler connection',
    make: () => ({ ...sprinklerSupply({ attack: { pdpPsi: 110 } }), invented: true }),
  },
  { id: 'draft', label: 'Draft with a lay to the fire', make: () => usual(draftSupply(handLines)) },
];
