import type { CriterionKey } from '../criteria.ts';

/** What a criterion is called for short. */
export const criterionWords: Readonly<Record<CriterionKey, string>> = {
  'water interrupted': 'Water interrupted',
  intake: 'Intake pressure',
  main: 'The main',
  hose: 'Hose limits',
  surge: 'Valves shut fast',
  opening: 'Valves opened fast',
  'nozzle swing': 'Swing at a nozzle',
  'time to boost': 'Time to boost',
  'extra line': 'Extra line',
  steps: 'Steps done',
  order: 'Order of steps',
  connections: 'Connections',
  messages: 'Messages',
  'unsafe acts': 'Unsafe acts',
  marks: 'The instructor’s marks',
};
