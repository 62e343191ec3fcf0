import {
  applianceLosses,
  assistValveLosses,
  capabilityFor,
  defaultLimitOrigins,
  defaultLimits,
  formatHoseSize,
  hoseCatalogue,
  hoseSizes,
  hydrantLosses,
  type LimitValues,
  type Loss,
  type LossEntry,
  nozzleCatalogue,
  type Origin,
  pumpRatingsGpm,
  type Quantity,
  rigLosses,
} from '@plugside/fireground';
import { table } from '../output/table.ts';
import type { Session } from '../session.ts';

interface CatalogueTopic {
  text: (session: Session) => string;
  data: () => unknown;
}

export type Topic = 'hose' | 'nozzles' | 'appliances' | 'hydrant' | 'pumps' | 'limits';

/** What the catalogue holds, by topic. */
export const catalogueTopics: Readonly<Record<Topic, CatalogueTopic>> = {
  hose: {
    text: hoseText,
    data: () => hoseSizes.map((size) => hoseCatalogue[size]),
  },
  nozzles: {
    text: ({ ink }) =>
      `${ink.head('Nozzles')}\n${table(
        [{ head: 'Nozzle' }, { head: 'Use' }, { head: 'From' }],
        nozzleCatalogue.map(({ label, use, origin }) => [label, use, originText(origin)]),
      )}`,
    data: () => nozzleCatalogue,
  },
  appliances: {
    text: (session) =>
      [
        lossText(session, 'Appliances', Object.values(applianceLosses)),
        lossText(session, 'Hydrant assist valve', Object.values(assistValveLosses)),
        lossText(session, 'Pump piping and strainer', Object.values(rigLosses)),
      ].join('\n\n'),
    data: () => ({ appliances: applianceLosses, assistValve: assistValveLosses, rig: rigLosses }),
  },
  hydrant: {
    text: (session) => lossText(session, 'Hydrant outlets', Object.values(hydrantLosses)),
    data: () => hydrantLosses,
  },
  pumps: {
    text: pumpsText,
    data: () => pumpRatingsGpm.map((ratedGpm) => ({ ratedGpm, ...capabilityFor({ ratedGpm }) })),
  },
  limits: {
    text: limitsText,
    data: () =>
      limitNames.map((name) => ({
        name,
        value: defaultLimits[name],
        origin: defaultLimitOrigins[name],
      })),
  },
};

const limitNames = Object.keys(defaultLimits) as (keyof LimitValues)[];

/** What each limit is called, and what it is measured in. */
const limitLabels: Readonly<Record<keyof LimitValues, [label: string, quantity?: Quantity]>> = {
  mainResidualPsi: ['Least in the main', 'pressure'],
  boosterIntakePsi: ['Least intake, booster at the hydrant', 'pressure'],
  hoseFedIntakePsi: ['Least intake, any other pump fed by hose', 'pressure'],
  supplyHosePsi: ['Most in hose of 3½ in and larger', 'pressure'],
  attackHosePsi: ['Most in smaller hose', 'pressure'],
  greatestIntakePsi: ['Most at an intake before the caution', 'pressure'],
  nozzleLeastFraction: ['Least nozzle pressure, share of rated'],
  nozzleGreatestFraction: ['Most nozzle pressure, share of rated'],
  hoseVelocityFtS: ['Velocity in hose worth a caution', 'velocity'],
  draftVacuumInHg: ['Most vacuum at a drafting intake', 'vacuum'],
};

function limitsText({ figures, ink }: Session): string {
  const rows = limitNames.map((name) => {
    const [label, quantity] = limitLabels[name];
    const value = defaultLimits[name];
    return [
      label,
      quantity ? figures.bare(value, quantity) : String(value),
      quantity ? figures.unit(quantity) : '',
      originText(defaultLimitOrigins[name]),
    ];
  });
  const columns = [
    { head: 'Limit' },
    { head: 'Value', number: true },
    { head: 'Unit' },
    { head: 'From' },
  ];
  return `${ink.head('Limits')}\n${table(columns, rows)}`;
}

function hoseText({ figures, ink, units }: Session): string {
  const rows = hoseSizes.flatMap((size) => {
    const entry = hoseCatalogue[size];
    const weight =
      entry.dryLbPer100Ft === undefined ? '' : figures.bare(entry.dryLbPer100Ft, 'mass');
    return [
      [
        formatHoseSize(size, units),
        String(entry.coefficient),
        entry.limitClass,
        weight,
        originText(entry.origin),
      ],
      ...entry.alternatives.map(({ coefficient, origin }) => [
        '',
        String(coefficient),
        '',
        '',
        `or: ${originText(origin)}`,
      ]),
    ];
  });
  const columns = [
    { head: 'Hose' },
    { head: 'C', number: true },
    { head: 'Limit class' },
    { head: `${figures.unit('mass')} per 100 ft dry`, number: true },
    { head: 'From' },
  ];
  const law = 'Friction in psi = C × (gpm/100)² × (ft/100), for each line.';
  return `${ink.head('Hose')}\n${law}\n${table(columns, rows)}`;
}

function lossText({ figures, ink }: Session, title: string, entries: readonly LossEntry[]): string {
  const cells = ({ lossPsi, atGpm }: Loss) => [
    figures.bare(lossPsi, 'pressure'),
    figures.bare(atGpm, 'flow'),
  ];
  const rows = entries.flatMap(({ label, loss, origin, alternatives }) => [
    [label, ...cells(loss), originText(origin)],
    ...alternatives.map((other) => ['', ...cells(other.loss), `or: ${originText(other.origin)}`]),
  ]);
  const columns = [
    { head: 'Piece' },
    { head: figures.head('Loss', 'pressure'), number: true },
    { head: figures.head('at', 'flow'), number: true },
    { head: 'From' },
  ];
  return `${ink.head(title)}\n${table(columns, rows)}`;
}

function pumpsText({ figures, ink }: Session): string {
  const rows = pumpRatingsGpm.map((ratedGpm) => {
    const { points } = capabilityFor({ ratedGpm });
    return [
      figures.bare(ratedGpm, 'flow'),
      points
        .map(([gpm, psi]) => `${figures.bare(gpm, 'flow')} at ${figures.bare(psi, 'pressure')}`)
        .join(', '),
    ];
  });
  const columns = [
    { head: figures.head('Rated', 'flow'), number: true },
    { head: `Flow, ${figures.unit('flow')}, at net pressure, ${figures.unit('pressure')}` },
  ];
  const { origin } = capabilityFor({ ratedGpm: 1500 });
  return `${ink.head('Pumps')}\n${originText(origin)}\n${table(columns, rows)}`;
}

function originText({ kind, text }: Origin): string {
  return `${kind}: ${text}`;
}
