/** How the profile is drawn. Lengths on the page in px. */
export interface ProfileSvgOptions {
  /** 960 where left out; at least 480. */
  width?: number;
  /** 420 where left out; at least 280. */
  height?: number;
  /** Over the drawing. */
  title?: string;
  /** A pressure with its unit, for instance `62 psi`. */
  formatPressure: (psi: number) => string;
  /** A distance with its unit, for instance `800 ft`. */
  formatDistance: (ft: number) => string;
  /** A flow with its unit, for instance `1,060 gpm`. */
  formatFlow: (gpm: number) => string;
  /** A piece of the plan for people; its id where left out. */
  nameOf?: (piece: string) => string;
  /** One of the unit shown, so that the axes count in round numbers of it: 1 psi where left out, 14.5038 for bar. */
  pressureUnitPsi?: number;
  /** One of the unit shown: 1 ft where left out, 3.28084 for m. */
  distanceUnitFt?: number;
  /** Floors to draw under the supply side [psi]; left out: none. */
  floors?: readonly { psi: number; label: string }[];
  /** `black and white` prints on any printer; `light` where left out. */
  tone?: 'light' | 'black and white';
}
