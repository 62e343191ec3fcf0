import type { Plan } from '../plan/plan.ts';
import { addAttackLines } from './attack-lines.ts';
import { boostedAtHydrant } from './boosted-at-hydrant.ts';
import { addManifoldLines, addWyedLines } from './branched-lines.ts';
import { draftSupply } from './draft-supply.ts';
import { dualLines } from './dual-lines.ts';
import { sprinklerSupply, standpipeSupply } from './fixed-systems.ts';
import { forwardLay } from './forward-lay.ts';
import type { LayOptions } from './lay.ts';
import { addMasterStream } from './master-stream.ts';
import type { HydrantTest } from './pieces.ts';
import { relay } from './relay.ts';
import { reverseLay } from './reverse-lay.ts';
import { twoHydrants } from './two-hydrants.ts';

/** What a pattern can be made to measure with; what is left out stays usual. */
export interface PatternOptions {
  title?: string;
  /** The flow test of the hydrant, of each where there are two; no use to a draft. */
  hydrant?: HydrantTest;
  /** Source to scene; of a relay from its first pump to its last. */
  lay?: LayOptions;
  /** Pumps of a relay, the attack engine counted: 2 to 40. */
  pumps?: number;
}

export interface Pattern {
  id: string;
  /** For people, one line. */
  label: string;
  /**
   * A plan with the usual values and what is given; without a given hydrant it is made up and
   * marked as invented. Throws RangeError for a relay of fewer than 2 pumps or more than 40.
   */
  make: (options?: PatternOptions) => Plan;
}

/** 100 psi at the nozzle and 70 lost in 200 ft of 1¾ in at 150 gpm. */
const handLines = { attack: { pdpPsi: 170 } };

const usual = (plan: Plan, rigId = 'A1') => addAttackLines(plan, rigId, [{}, {}]);

function pattern(
  id: string,
  label: string,
  build: (given: Omit<PatternOptions, 'pumps'>, pumps?: number) => Plan,
): Pattern {
  return {
    id,
    label,
    make({ pumps, ...options } = {}) {
      const given = Object.fromEntries(
        Object.entries(options).filter(([, value]) => value !== undefined),
      );
      return { ...build(given, pumps), invented: options.hydrant === undefined };
    },
  };
}

/** Every pattern ready to use, each with hand lines or what it feeds. */
export const patternList: readonly Pattern[] = [
  pattern('forward-lay', 'Forward lay: hydrant to fire on hydrant pressure', (given) =>
    usual(forwardLay({ ...handLines, ...given })),
  ),
  pattern('reverse-lay', 'Reverse lay: an engine at the hydrant pumps the line', (given) =>
    usual(reverseLay({ ...handLines, ...given })),
  ),
  pattern('boosted-at-hydrant', 'Boosted at the hydrant through an assist valve', (given) =>
    usual(boostedAtHydrant({ ...handLines, ...given })),
  ),
  pattern('boosted-with-side-lines', 'Boosted, with lines from the side outlets too', (given) =>
    usual(
      boostedAtHydrant({
        ...handLines,
        booster: { sideLines: [{ hose: '3' }, { hose: '3' }] },
        ...given,
      }),
    ),
  ),
  pattern('relay', 'Relay of three pumps', (given, pumps = 3) =>
    usual(relay({ attackPdpPsi: 170, pumps, ...given }), `P${pumps}`),
  ),
  pattern('two-hydrants', 'Two hydrants into one engine', ({ title, hydrant, lay }) => {
    const each = { ...lay, hydrant };
    return usual(twoHydrants({ ...handLines, title, first: each, second: each }));
  }),
  pattern('dual-lines', 'Two lines side by side from one hydrant', (given) =>
    usual(dualLines({ ...handLines, ...given })),
  ),
  pattern('wyed-lines', 'Two hand lines from a wye', (given) =>
    // Shorter lines than usual: the leader has its own loss.
    addWyedLines(forwardLay({ attack: { pdpPsi: 180 }, ...given }), 'A1', {
      lines: [{ lengthFt: 100 }, { lengthFt: 100 }],
    }),
  ),
  pattern('manifold', 'Hand lines from a manifold', (given) =>
    addManifoldLines(forwardLay({ attack: { pdpPsi: 175 }, ...given }), 'A1', {
      lines: [{}, {}, {}],
    }),
  ),
  pattern('master-stream', 'Master stream from a boosted supply', (given) =>
    addMasterStream(boostedAtHydrant({ attack: { pdpPsi: 100 }, ...given }), 'A1'),
  ),
  pattern('standpipe', 'Standpipe with a hand line on an upper floor', (given) =>
    standpipeSupply({ attack: { pdpPsi: 100 }, ...given }),
  ),
  pattern('sprinkler', 'Sprinkler connection', (given) =>
    sprinklerSupply({ attack: { pdpPsi: 110 }, ...given }),
  ),
  pattern('draft', 'Draft with a lay to the fire', ({ title, lay }) =>
    usual(draftSupply({ ...handLines, title, lay })),
  ),
];
