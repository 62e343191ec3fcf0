/** The theme's colours, as the map needs them: it draws on a canvas that knows no style sheet. */
export interface MapColours {
  paper: string;
  sheet: string;
  ink: string;
  inkSoft: string;
  hairline: string;
  line: string;
  water: string;
  /** The lay and what it can reach: by night no class may look like it. */
  lay: string;
  onWater: string;
  warning: string;
  ground: string;
  groundLine: string;
  classAA: string;
  classA: string;
  classB: string;
  classC: string;
  classInk: string;
  /** Of the brightest part of a base map, 0 to 1: by night it must not blind. */
  baseBright: string;
}

const TOKENS: Readonly<Record<keyof MapColours, string>> = {
  paper: '--paper',
  sheet: '--sheet',
  ink: '--ink',
  inkSoft: '--ink-soft',
  hairline: '--hairline',
  line: '--line',
  water: '--water',
  lay: '--lay',
  onWater: '--on-water',
  warning: '--warning',
  ground: '--ground',
  groundLine: '--ground-line',
  classAA: '--class-aa',
  classA: '--class-a',
  classB: '--class-b',
  classC: '--class-c',
  classInk: '--class-ink',
  baseBright: '--base-map-bright',
};

/** As the page's theme has them now. */
export function mapColours(): MapColours {
  const style = getComputedStyle(document.documentElement);
  return Object.fromEntries(
    Object.entries(TOKENS).map(([name, token]) => [name, style.getPropertyValue(token).trim()]),
  ) as unknown as MapColours;
}
