/** Water that lies or runs: a pump at draft, how long a pond lasts, what a stream carries. */
export { type DraftAnswer, type DraftPlace, draftAt } from './draft-at.ts';
export { FT2_PER_ACRE, GAL_PER_FT3, pondGal, stillWaterMin, waterForGal } from './still-water.ts';
export { FLOAT_FACTOR, type StreamReading, streamFlow } from './stream-flow.ts';
