/** What a street is good for, by its class. */
import type { StreetLine } from './street-graph.ts';

/** A street with its class in its list's words. */
export interface ClassedStreet extends StreetLine {
  class?: string | null | undefined;
}

/**
 * Classes of roads that nobody stops on: no place for hose or crews. "motorway" and its links as the
 * OpenStreetMap wiki has them ("Key:highway"), S1100 and S1630 (ramps) as the census feature class
 * codes of TIGER/Line, and the words that lists use for them (common practice, no source).
 */
const noPlaceForHose: ReadonlySet<string> = new Set([
  'motorway',
  'motorway_link',
  'motorway link',
  'freeway',
  'interstate',
  'expressway',
  's1100',
  's1630',
]);

/** Whether hose may be laid along a street: on foot too, but on no motorway. A street without a class may. */
export const takesHose = ({ class: kind }: Pick<ClassedStreet, 'class'>): boolean =>
  !noPlaceForHose.has((kind ?? '').trim().toLowerCase());

/** Whether rigs drive it; one-way streets count in both directions, as rigs under way may take them. */
export const takesRigs = ({ footOnly }: Pick<ClassedStreet, 'footOnly'>): boolean => !footOnly;

/** The same list, in the same order, with what is no place for hose left without a course. */
export const hoseStreets = (streets: Iterable<ClassedStreet>): StreetLine[] =>
  withCourse(streets, takesHose);

/** The same for rigs. */
export const rigRoads = (streets: Iterable<ClassedStreet>): StreetLine[] =>
  withCourse(streets, takesRigs);

/** A street's number is its place in the list, so none is taken out. */
function withCourse(
  streets: Iterable<ClassedStreet>,
  isGood: (street: ClassedStreet) => boolean,
): StreetLine[] {
  return Array.from(streets, (street) => (isGood(street) ? street : { ...street, path: [] }));
}
