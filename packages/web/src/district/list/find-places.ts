/** Finding places by their words, nearest first. */
import { crowFt, type Place } from '@plugside/records/streets';

const plain = (text: string): string => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();

/**
 * Places whose words hold every word asked for, nearest first.
 * @param words of a place, searched in
 */
export function findPlaces<Found extends Place>(
  places: readonly Found[],
  asked: string,
  words: (place: Found) => string,
  from: Place | null,
): { place: Found; awayFt: number | null }[] {
  const wanted = plain(asked).split(/\s+/).filter(Boolean);
  const found = places
    .filter((place) => {
      const told = plain(words(place));
      return wanted.every((word) => told.includes(word));
    })
    .map((place) => ({
      place,
      awayFt: from
        ? crowFt([from.longitude, from.latitude], [place.longitude, place.latitude])
        : null,
    }));
  return from ? found.sort((a, b) => (a.awayFt ?? 0) - (b.awayFt ?? 0)) : found;
}
