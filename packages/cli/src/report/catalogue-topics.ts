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
  pumpRatingsGpm,
  type Quantity,
  rigLosses,
} from '@plugside/fireground';
import { paragraph } from '../output/paragraph.ts';
import { SourceList } from '../output/sources.ts';
import { table } from '../output/table.ts';
import type { Terminal } from '../terminal.ts';

interface CatalogueTopic {
  text: (terminal: Terminal) => string;
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
    text: nozzlesText,
    data: () => nozzleCatalogue,
  },
  appliances: {
    text: (terminal) =>
      [
        lossText(terminal, 'Appliances', Object.values(applianceLosses)),
        lossText(terminal, 'Hydrant assist valve', Object.values(assistValveLosses)),
        lossText(terminal, 'Pump piping and strainer', Object.values(rigLosses)),
      ].join('\n\n'),
    data: () => ({ appliances: applianceLosses, assistValve: assistValveLosses, rig: rigLosses }),
  },
  hydrant: {
    text: (terminal) => lossText(terminal, 'Hydrant outlets', Object.values(hydrantLosses)),
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
  hilltopPsi: ['Least in hose on a hill between its ends', 'pressure'],
  greatestIntakePsi: ['Most at an intake before the caution', 'pressure'],
  nozzleLeastFraction: ['Least nozzle pressure, share of rated'],
  nozzleGreatestFraction: ['Most nozzle pressure, share of rated'],
  hoseVelocityFtS: ['Velocity in hose worth a caution', 'velocity'],
  draftVacuumInHg: ['Most vacuum at a drafting intake', 'vacuum'],
  leastDischargePsi: ['Least discharge pressure set at a pump', 'pressure'],
};

function nozzlesText(terminal: Terminal): string {
  const sources = new SourceList();
  const rows = nozzleCatalogue.map(({ label, use, origin }) => [label, use, sources.mark(origin)]);
  const columns = [{ head: 'Nozzle' }, { head: 'Use' }, { head: 'From' }];
  return titled(terminal, 'Nozzles', table(columns, rows), sources);
}

function limitsText(terminal: Terminal): string {
  const { figures } = terminal;
  const sources = new SourceList();
  const rows = limitNames.map((name) => {
    const [label, quantity] = limitLabels[name];
    const value = defaultLimits[name];
    return [
      label,
      quantity ? figures.bare(value, quantity) : String(value),
      quantity ? figures.unit(quantity) : '',
      sources.mark(defaultLimitOrigins[name]),
    ];
  });
  const columns = [
    { head: 'Limit' },
    { head: 'Value', number: true },
    { head: 'Unit' },
    { head: 'From' },
  ];
  return titled(terminal, 'Limits', table(columns, rows), sources);
}

function hoseText(terminal: Terminal): string {
  const { figures, units } = terminal;
  const sources = new SourceList();
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
        sources.mark(entry.origin),
      ],
      ...entry.alternatives.map(({ coefficient, origin }) => [
        '',
        String(coefficient),
        '',
        '',
        `or ${sources.mark(origin)}`,
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
  return titled(terminal, 'Hose', `${law}\n${table(columns, rows)}`, sources);
}

function lossText(terminal: Terminal, title: string, entries: readonly LossEntry[]): string {
  const { figures } = terminal;
  const sources = new SourceList();
  const cells = ({ lossPsi, atGpm }: Loss) => [
    figures.bare(lossPsi, 'pressure'),
    figures.bare(atGpm, 'flow'),
  ];
  const rows = entries.flatMap(({ label, loss, origin, alternatives }) => [
    [label, ...cells(loss), sources.mark(origin)],
    ...alternatives.map((other) => ['', ...cells(other.loss), `or ${sources.mark(other.origin)}`]),
  ]);
  const columns = [
    { head: 'Piece' },
    { head: figures.head('Loss', 'pressure'), number: true },
    { head: figures.head('at', 'flow'), number: true },
    { head: 'From' },
  ];
  return titled(terminal, title, table(columns, rows), sources);
}

function pumpsText({ figures, ink }: Terminal): string {
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
  return `${ink.head('Pumps')}\n${origin.kind}: ${origin.text}\n${table(columns, rows)}`;
}

/** A table under its title, with the sources that its marks stand for. */
function titled(
  { ink, width }: Terminal,
  title: string,
  body: string,
  sources: SourceList,
): string {
  const lines = sources.lines.map((line) => paragraph(line, width, '    '));
  return `${ink.head(title)}\n${body}\n${lines.join('\n')}`;
}
