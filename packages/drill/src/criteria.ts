/** What a drill is judged on, in the order it is told. */
export const criteria = [
  'water interrupted',
  'intake',
  'main',
  'hose',
  'surge',
  'opening',
  'nozzle swing',
  'time to boost',
  'extra line',
  'steps',
  'order',
  'connections',
  'messages',
  'unsafe acts',
  'marks',
] as const;

export type CriterionKey = (typeof criteria)[number];
