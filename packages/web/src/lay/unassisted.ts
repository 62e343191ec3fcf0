import type { PressureProfile } from '@plugside/fireground';

/** What the hydrant's own pressure gives, for the dashed line. */
export interface UnassistedPicture {
  profile: PressureProfile;
  flowGpm: number;
}
