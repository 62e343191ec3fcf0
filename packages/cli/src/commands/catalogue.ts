import { Argument, type Command } from 'commander';
import type { Answer } from '../answer.ts';
import { examples } from '../examples.ts';
import { exitCodes } from '../exit-codes.ts';
import type { Outcome } from '../outcome.ts';
import { paragraph, sections } from '../output/paragraph.ts';
import { catalogueTopics, type Topic } from '../report/catalogue-topics.ts';
import type { CommonOptions, Terminal } from '../terminal.ts';
import { withCommonOptions } from './common-options.ts';

const topicNames = Object.keys(catalogueTopics) as Topic[];

/** `catalogue`: the values that stand where a plan says nothing, and where each comes from. */
export function addCatalogue(program: Command, answer: Answer): void {
  withCommonOptions(
    program
      .command('catalogue')
      .description(
        'The values that stand where a plan says nothing, where each comes from, and what else is published.',
      )
      .addArgument(
        new Argument('[TOPIC]', 'which; all of them where left out').choices(topicNames),
      ),
  )
    .addHelpText(
      'after',
      examples(
        ['plugside catalogue hose', 'Friction coefficients with their origins and alternatives.'],
        ['plugside catalogue limits --units si', 'Every limit and why it stands there, in bar.'],
      ),
    )
    .action((topic: Topic | undefined, options: CommonOptions) =>
      answer('catalogue', options, (terminal) => askCatalogue(terminal, topic)),
    );
}

function askCatalogue(terminal: Terminal, topic: Topic | undefined): Outcome {
  const topics = topic ? [topic] : topicNames;
  return {
    exitCode: exitCodes.answered,
    text: () =>
      sections(
        ...topics.map((name) => catalogueTopics[name].text(terminal)),
        paragraph(
          "Each is a default: your department's own values in a plan replace it, and should.",
          terminal.width,
        ),
      ),
    data: () => ({
      answer: {
        question: 'catalogue',
        ...Object.fromEntries(topics.map((name) => [name, catalogueTopics[name].data()])),
      },
    }),
  };
}
