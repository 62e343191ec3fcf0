import type { Loss, Origin } from '../plan/plan.ts';
import { byDefault, maker, measured, practice } from './origins.ts';

export interface LossChoice {
  loss: Loss;
  origin: Origin;
}

export interface LossEntry extends LossChoice {
  label: string;
  /** Other published figures, for a department to pick from. */
  alternatives: readonly LossChoice[];
  /** Where published figures spread: least and greatest loss [psi] at 1,000 gpm. */
  publishedSpreadPsi?: readonly [least: number, greatest: number];
}

const at = (lossPsi: number, atGpm: number): Loss => ({ lossPsi, atGpm });

const tenAt350 = practice('"Pump Ops ch 7" study cards: 10 psi from 350 gpm up');
const fieldFigures = "Published field figures differ widely; ask for the maker's or measure yours";
const wildland = {
  loss: at(5, 350),
  origin: practice('NWCG courseware S.3.4: 5 psi each; taken here at 350 gpm'),
};

/** Wyes, siameses, manifolds, monitors and fixed systems. */
export const applianceLosses = {
  wye: {
    label: 'Wye',
    loss: at(10, 350),
    origin: tenAt350,
    alternatives: [
      wildland,
      {
        loss: at(25, 350),
        origin: practice('Florida pump-operations examination answers: 25 psi; an outlier'),
      },
    ],
  },
  siamese: {
    label: 'Siamese',
    loss: at(10, 350),
    origin: tenAt350,
    alternatives: [wildland],
  },
  manifold: {
    label: 'Manifold',
    loss: at(10, 1000),
    origin: byDefault('10 psi taken at 1,000 gpm, as for a large-diameter appliance'),
    alternatives: [{ loss: at(10, 350), origin: tenAt350 }],
  },
  monitor: {
    label: 'Master stream device',
    loss: at(25, 1000),
    origin: practice('"Pump Ops ch 7" study cards: 25 psi at any flow; taken here at 1,000 gpm'),
    alternatives: [],
  },
  standpipe: {
    label: 'Standpipe system',
    loss: at(25, 500),
    origin: practice('"Engineer\'s Test" study cards: 25 psi; taken here at 500 gpm'),
    alternatives: [],
  },
} as const satisfies Record<string, LossEntry>;

/** Hydrant assist valve, path by path. */
export const assistValveLosses = {
  clapper: {
    label: 'Hydrant to supply through the clapper',
    loss: at(10, 1000),
    origin: byDefault(fieldFigures),
    publishedSpreadPsi: [5, 23],
    alternatives: [
      {
        loss: at(23, 1000),
        origin: maker("A valve maker's published flow test: 23 psi at 1,000 gpm, 36 at 1,300"),
      },
      { loss: at(5, 1000), origin: measured('Least of the published field figures') },
    ],
  },
  suction: {
    label: 'Hydrant to pump suction',
    loss: at(8, 1000),
    origin: byDefault(fieldFigures),
    publishedSpreadPsi: [1, 15],
    alternatives: [],
  },
  discharge: {
    label: 'Pump discharge to supply',
    loss: at(3, 1000),
    origin: byDefault(fieldFigures),
    publishedSpreadPsi: [0, 5],
    alternatives: [],
  },
} as const satisfies Record<string, LossEntry>;

/** Hydrant outlets. */
export const hydrantLosses = {
  steamer: {
    label: 'Main to steamer outlet',
    loss: at(5, 1000),
    origin: byDefault('Lateral, barrel and outlet; measure yours by a test at the outlet'),
    alternatives: [],
  },
  side: {
    label: 'Main to a 2½ in side outlet with its gate valve',
    loss: at(6, 500),
    origin: byDefault('Barrel, outlet and gate valve; measure yours by a test at the outlet'),
    alternatives: [],
  },
} as const satisfies Record<string, LossEntry>;

/** Side outlets of a hydrant where the plan does not say. */
export const usualSideOutlets = 2;

/** Rig piping and draft fittings. */
export const rigLosses = {
  pass: {
    label: 'Through a pump that is not pumping',
    loss: at(5, 1000),
    origin: byDefault('No published figure found; measure yours'),
    alternatives: [],
  },
  strainer: {
    label: 'Strainer and foot valve',
    loss: at(2, 1000),
    origin: byDefault('No published figure found; use the suction test of your own pump'),
    alternatives: [],
  },
} as const satisfies Record<string, LossEntry>;

/** An adapter between two sizes of hose; ours, no source: the loss is small. */
export const adapterLoss = { lossPsi: 1, atGpm: 1000 } as const;
