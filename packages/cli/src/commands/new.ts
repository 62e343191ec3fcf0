import {
  checkPlan,
  fieldRanges,
  type HoseSize,
  type HydrantTest,
  hoseSizes,
  type LayOptions,
  type Pattern,
  type Plan,
  type PlanFormat,
  parseHoseSize,
  patternList,
} from '@plugside/fireground';
import { type Command, InvalidArgumentError, Option } from 'commander';
import type { Answer } from '../answer.ts';
import { examples } from '../examples.ts';
import { exitCodes } from '../exit-codes.ts';
import { CommandFailure } from '../failure.ts';
import { quantityArgument, readQuantity } from '../input/quantity-argument.ts';
import type { Outcome } from '../outcome.ts';
import { table } from '../output/table.ts';
import type { CommonOptions } from '../terminal.ts';
import { withCommonOptions } from './common-options.ts';
import { goesToFile, type OutputOptions, withOutput } from './output-option.ts';
import { planOutcome } from './plan-outcome.ts';

interface NewOptions extends CommonOptions, OutputOptions {
  title?: string;
  hydrant?: HydrantTest;
  hose?: HoseSize;
  length?: number;
  rise?: number;
  lines?: number;
  pumps?: number;
  to?: PlanFormat;
}

/** `new`: a first plan to change. */
export function addNew(program: Command, answer: Answer): void {
  const names = patternList.map(({ id }) => id).join(', ');
  const command = program
    .command('new')
    .description('A first plan from a standard evolution, ready to ask of and to change.')
    .argument('[PATTERN]', `one of: ${names}; left out: they are listed`)
    .option('--title <text>', "the plan's title")
    .addOption(
      new Option(
        '--hydrant <test>',
        'its flow test as static/residual/flow: 62/44/1060, or "4.3 bar/3 bar/4000 L/min"',
      ).argParser(readHydrantTest),
    )
    .addOption(
      new Option('--hose <size>', 'hose of the lay: 5, "2-1/2", "125 mm"').argParser(readHose),
    )
    .addOption(
      new Option('--length <length>', 'length of the lay').argParser(
        quantityArgument(fieldRanges.length),
      ),
    )
    .addOption(
      new Option('--rise <height>', 'height of the scene above the source').argParser(
        quantityArgument({ quantity: 'length', least: -2_000, greatest: 2_000 }),
      ),
    )
    .addOption(new Option('--lines <count>', 'like lines side by side').argParser(readCount(1, 6)))
    .addOption(new Option('--pumps <count>', 'pumps of a relay').argParser(readCount(2, 40)));
  withCommonOptions(
    withOutput(command, 'plan file to write').addOption(
      new Option('--to <format>', 'yaml or json; as the file is named where left out').choices([
        'yaml',
        'json',
      ]),
    ),
  )
    .addHelpText(
      'after',
      examples(
        ['plugside new', 'The patterns that there are.'],
        [
          'plugside new boosted-at-hydrant --hydrant 62/44/1060 --length "900 ft" --rise 35 -o plan.yaml',
          'A boosted lay from your own flow test, in a file to change.',
        ],
      ),
    )
    .action((pattern: string | undefined, options: NewOptions) =>
      answer('new', options, () => (pattern === undefined ? listed() : made(pattern, options))),
    );
}

function listed(): Outcome {
  return {
    exitCode: exitCodes.answered,
    text: () =>
      table(
        [{ head: 'Pattern' }, { head: 'What it is' }],
        patternList.map(({ id, label }) => [id, label]),
      ),
    data: () => ({
      answer: {
        question: 'patterns',
        patterns: patternList.map(({ id, label }) => ({ id, label })),
      },
    }),
  };
}

function made(name: string, options: NewOptions): Outcome {
  const pattern = patternList.find(({ id }) => id === name);
  if (!pattern) {
    throw new CommandFailure(
      `There is no pattern ${name}. Allowed: ${patternList.map(({ id }) => id).join(', ')}.`,
    );
  }
  const toFile = goesToFile(options);
  const plan = planFrom(pattern, options);
  return planOutcome('new', plan, toFile, options, 'yaml');
}

function planFrom(pattern: Pattern, options: NewOptions): Plan {
  const { title, hydrant, hose, length, rise, lines, pumps } = options;
  if (hydrant && pattern.make().hydrants.length === 0) {
    throw new CommandFailure(`${pattern.id} has no hydrant: leave --hydrant out.`);
  }
  if (pumps !== undefined && pattern.id !== 'relay') {
    throw new CommandFailure(`--pumps goes with relay, not with ${pattern.id}.`);
  }
  const lay: LayOptions = {
    ...(hose && { hose }),
    ...(length !== undefined && { lengthFt: length }),
    ...(rise !== undefined && { riseFt: rise }),
    ...(lines !== undefined && { count: lines }),
  };
  const plan = pattern.make({
    ...(title !== undefined && { title }),
    ...(hydrant && { hydrant }),
    ...(Object.keys(lay).length > 0 && { lay }),
    ...(pumps !== undefined && { pumps }),
  });
  const issues = checkPlan(plan);
  if (issues.length > 0) {
    throw new CommandFailure(issues.map(({ message }) => message).join('\n'));
  }
  return plan;
}

function readHydrantTest(text: string): HydrantTest {
  // The unit L/min has a stroke of its own.
  const parts = text.split(/(?<![lL]\s*)\//).map((part) => part.trim());
  if (parts.length !== 3) {
    throw new InvalidArgumentError(
      'Allowed: static/residual/flow of one flow test, for instance 62/44/1060.',
    );
  }
  const [statically, residual, flow] = parts as [string, string, string];
  const staticPsi = readQuantity(statically, fieldRanges.staticPressure);
  const residualPsi = readQuantity(residual, fieldRanges.residualPressure);
  const testGpm = readQuantity(flow, fieldRanges.testFlow);
  if (residualPsi >= staticPsi) {
    throw new InvalidArgumentError(
      `The residual (${residual}) is not below the static (${statically}). Write static/residual/flow, in this order.`,
    );
  }
  return { staticPsi, residualPsi, testGpm };
}

function readHose(text: string): HoseSize {
  const size = parseHoseSize(text);
  if (!size) throw new InvalidArgumentError(`Allowed: ${hoseSizes.join(', ')} (in).`);
  return size;
}

const readCount = (least: number, greatest: number) => (text: string) => {
  const count = Number(text);
  if (text.trim() === '' || !Number.isInteger(count) || count < least || count > greatest) {
    throw new InvalidArgumentError(`Allowed: a whole number from ${least} to ${greatest}.`);
  }
  return count;
};
