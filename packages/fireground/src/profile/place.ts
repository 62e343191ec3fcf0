import type { ProfileSpan, ProfileStation } from './profile.ts';

/** A station whose distance is not known yet. */
export type Place = Omit<ProfileStation, 'alongFt'>;

/** One span, and the place at its end where another span of the same way follows. */
export interface Stretch {
  span: ProfileSpan;
  lengthFt: number;
  end?: Place;
}
