/** The district as a whole, read from the store. */
export { districtRoads, districtStreets } from './district-streets.ts';
export { everyRecord } from './every-record.ts';
export { inTurns } from './in-turns.ts';
export { flowTestsAhead, planTest, planTests } from './plan-tests.ts';
export { type District, readDistrict } from './read-district.ts';
export { type SituationAt, type SituationAtOptions, situationAt } from './situation-at.ts';
