import {
  limitsFor,
  mostWater,
  type Plan,
  type PressureProfile,
  type ProfilePath,
  profileOf,
  profileSvg,
  quantities,
  type SupplyState,
  settingsFor,
  solveNow,
  toInside,
} from '@plugside/fireground';
import { type Command, Option } from 'commander';
import type { Answer } from '../answer.ts';
import { examples } from '../examples.ts';
import { exitCodes } from '../exit-codes.ts';
import { readPlanFile } from '../input/read-plan-file.ts';
import type { Outcome } from '../outcome.ts';
import { paragraph, sections } from '../output/paragraph.ts';
import { table } from '../output/table.ts';
import { aboutPlan, heading } from '../report/heading.ts';
import { closing } from '../report/notices.ts';
import { nameById } from '../report/orders-table.ts';
import type { CommonOptions, Terminal } from '../terminal.ts';
import { withCommonOptions } from './common-options.ts';
import { goesToFile, type OutputOptions, withOutput, writeOutput } from './output-option.ts';
import { planCommand } from './plan-argument.ts';

type Tone = 'light' | 'black-and-white';

interface ProfileOptions extends CommonOptions, OutputOptions {
  of: 'most' | 'set' | 'now';
  tone: Tone;
}

/** `profile`: pressure against distance, as a drawing or as figures. */
export function addProfile(program: Command, answer: Answer): void {
  const command = planCommand(
    program,
    'profile',
    'Pressure along the hose from source to nozzle: a drawing (SVG) in a file, or the figures behind it.',
  ).addOption(
    new Option('--of <state>', 'settings of the greatest flow, for the demand, or as they stand')
      .choices(['most', 'set', 'now'])
      .default('most'),
  );
  withCommonOptions(
    withOutput(command, 'SVG file to write; - writes the drawing to standard output').addOption(
      new Option('--tone <tone>', 'tone of the drawing')
        .choices(['light', 'black-and-white'] satisfies Tone[])
        .default('light'),
    ),
  )
    .addHelpText(
      'after',
      examples(
        [
          'plugside profile examples/cold-store.yaml -o cold-store.svg',
          'The drawing at the greatest flow.',
        ],
        [
          'plugside profile examples/hill-relay.yaml --of now',
          'The figures with every pump as it is set.',
        ],
      ),
    )
    .action((file: string, options: ProfileOptions) =>
      answer('profile', options, (terminal) => askProfile(terminal, file, options)),
    );
}

async function askProfile(
  terminal: Terminal,
  file: string,
  options: ProfileOptions,
): Promise<Outcome> {
  const toFile = goesToFile(options);
  const { plan } = await readPlanFile(file);
  const solved = solvedFor(plan, options.of);
  const profile = profileOf(solved.plan, solved.state);
  const drawing = () => drawingOf(terminal, solved.plan, profile, options.tone);
  const wrote = toFile ? writeOutput(options, drawing()) : undefined;
  return {
    exitCode: solved.ok ? exitCodes.answered : exitCodes.notWithinLimits,
    text: () => {
      if (wrote) return wrote;
      return options.output === '-' ? drawing() : profileText(terminal, solved.plan, profile);
    },
    data: () => ({
      plan: aboutPlan(plan),
      answer: {
        question: 'profile',
        of: options.of,
        profile,
        ...(wrote && { file: options.output }),
      },
    }),
  };
}

interface Solved {
  plan: Plan;
  state: SupplyState;
  ok: boolean;
}

function solvedFor(plan: Plan, of: ProfileOptions['of']): Solved {
  if (of === 'now') return { plan, state: solveNow(plan), ok: true };
  if (of === 'set') {
    const found = settingsFor(plan);
    return { plan: found.plan, state: found.state, ok: found.possible };
  }
  const found = mostWater(plan);
  return { plan: found.plan, state: found.state, ok: found.flowGpm > 0 };
}

function drawingOf(
  { figures, units }: Terminal,
  plan: Plan,
  profile: PressureProfile,
  tone: Tone,
): string {
  const limits = limitsFor(plan);
  const drawing = profileSvg(profile, {
    title: heading(plan),
    formatPressure: (psi) => figures.full(psi, 'pressure'),
    formatDistance: (ft) => figures.full(ft, 'length'),
    formatFlow: (gpm) => figures.full(gpm, 'flow'),
    nameOf: (piece) => nameById(plan, piece),
    pressureUnitPsi: toInside(1, 'pressure', quantities.pressure.shown[units]),
    distanceUnitFt: toInside(1, 'length', quantities.length.shown[units]),
    floors: [{ psi: limits.hoseFedIntakePsi, label: 'least intake' }],
    tone: tone === 'light' ? 'light' : 'black and white',
  });
  return `<?xml version="1.0" encoding="UTF-8"?>\n${drawing}\n`;
}

function profileText(terminal: Terminal, plan: Plan, profile: PressureProfile): string {
  const { figures, ink, width } = terminal;
  const [first] = profile.supply;
  const sentence = first
    ? `${first.label}: ${figures.full(first.flowGpm, 'flow')}.`
    : 'No water reaches the scene.';
  return sections(
    heading(plan),
    ink.answer(paragraph(sentence, width)),
    ...[...profile.supply, ...profile.attack].map((path) => pathTable(terminal, plan, path)),
    closing(terminal),
  );
}

function pathTable({ figures, ink }: Terminal, plan: Plan, path: ProfilePath): string {
  const rows = path.stations.map((station, at) => {
    const place = nameById(plan, station.piece);
    return [
      figures.bare(station.alongFt, 'length'),
      figures.bare(station.elevationFt, 'length'),
      figures.bare(station.psi, 'pressure'),
      station.kind === 'nozzle' ? place : `${place}, ${station.kind}`,
      throughWhat(plan, path, at),
    ];
  });
  const columns = [
    { head: figures.head('Along', 'length'), number: true },
    { head: figures.head('Height', 'length'), number: true },
    { head: figures.head('Pressure', 'pressure'), number: true },
    { head: 'Place' },
    { head: 'Then through' },
  ];
  return `${ink.head(`${path.label}, ${figures.full(path.flowGpm, 'flow')}`)}\n${table(columns, rows)}`;
}

function throughWhat(plan: Plan, path: ProfilePath, at: number): string {
  const span = path.spans[at];
  if (!span) return '';
  if (span.kind === 'hose') return `line ${span.line}`;
  return span.kind === 'pump' ? `${nameById(plan, span.rig)}'s pump` : nameById(plan, span.piece);
}
