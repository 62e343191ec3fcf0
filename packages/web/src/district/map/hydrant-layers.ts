/** Hydrants: a disc in the class colour of NFPA 291, its letter from close by, a cross when out of service. */
import type { ExpressionSpecification, LayerSpecification } from 'maplibre-gl';
import { FONT, growing, PICKED } from './expressions.ts';
import type { MapColours } from './map-colours.ts';
import { SOURCE } from './map-sources.ts';

/** From here on the letters have room in the discs. */
const LETTERS_FROM_ZOOM = 15;

const OUT: ExpressionSpecification = ['==', ['get', 'status'], 'out of service'];
const SINGLE: ExpressionSpecification = ['!', ['has', 'point_count']];
const UNTESTED: ExpressionSpecification = ['==', ['coalesce', ['get', 'class'], ''], ''];
const TWO_LETTERS: ExpressionSpecification = ['==', ['get', 'class'], 'AA'];
const NEAR: ExpressionSpecification = ['boolean', ['feature-state', 'near'], false];

export function hydrantLayers(colours: MapColours): LayerSpecification[] {
  const discColour: ExpressionSpecification = [
    'case',
    OUT,
    colours.paper,
    [
      'match',
      ['coalesce', ['get', 'class'], ''],
      'AA',
      colours.classAA,
      'A',
      colours.classA,
      'B',
      colours.classB,
      'C',
      colours.classC,
      colours.sheet,
    ],
  ];
  const disc = growing(13, 5, 18, 15.5);
  return [
    {
      id: 'hydrant-group',
      type: 'circle',
      source: SOURCE.hydrants,
      filter: ['has', 'point_count'],
      paint: {
        'circle-color': colours.sheet,
        'circle-stroke-color': colours.inkSoft,
        'circle-stroke-width': 1.25,
        'circle-radius': ['step', ['get', 'point_count'], 10, 20, 13, 100, 16, 500, 19],
      },
    },
    {
      id: 'hydrant-group-count',
      type: 'symbol',
      source: SOURCE.hydrants,
      filter: ['has', 'point_count'],
      layout: {
        'text-field': ['get', 'point_count_abbreviated'],
        'text-font': FONT,
        'text-size': 12,
        'text-allow-overlap': true,
      },
      paint: { 'text-color': colours.ink },
    },
    {
      id: 'hydrant-ring',
      type: 'circle',
      source: SOURCE.hydrants,
      filter: SINGLE,
      paint: {
        'circle-radius': growing(13, 7, 18, 20),
        'circle-color': colours.lay,
        'circle-opacity': ['case', PICKED, 0.3, 0],
        'circle-stroke-color': colours.lay,
        'circle-stroke-width': ['case', PICKED, 2.5, NEAR, 1.75, 0],
      },
    },
    {
      id: 'hydrant',
      type: 'circle',
      source: SOURCE.hydrants,
      filter: SINGLE,
      paint: {
        'circle-radius': disc,
        'circle-color': discColour,
        'circle-stroke-color': ['case', OUT, colours.warning, colours.classInk],
        'circle-stroke-width': growing(13, 0.75, 18, 1.5),
      },
    },
    {
      id: 'hydrant-letter',
      type: 'symbol',
      source: SOURCE.hydrants,
      filter: ['all', SINGLE, ['!', OUT]],
      minzoom: LETTERS_FROM_ZOOM,
      layout: {
        'text-field': ['coalesce', ['get', 'class'], '?'],
        'text-font': ['IBM Plex Sans Condensed SemiBold'],
        'text-size': [
          'interpolate',
          ['exponential', 1.6],
          ['zoom'],
          LETTERS_FROM_ZOOM,
          ['case', TWO_LETTERS, 8, 10],
          18,
          ['case', TWO_LETTERS, 15, 18],
        ],
        'text-allow-overlap': true,
        'text-ignore-placement': true,
      },
      paint: {
        'text-color': ['case', UNTESTED, colours.ink, colours.classInk],
      },
    },
    {
      id: 'hydrant-cross',
      type: 'symbol',
      source: SOURCE.hydrants,
      filter: ['all', SINGLE, OUT],
      layout: {
        'text-field': '✕',
        'text-font': FONT,
        'text-size': growing(13, 9, 18, 26),
        'text-allow-overlap': true,
        'text-ignore-placement': true,
      },
      paint: { 'text-color': colours.warning },
    },
    {
      id: 'hydrant-name',
      type: 'symbol',
      source: SOURCE.hydrants,
      filter: SINGLE,
      minzoom: 16.2,
      layout: {
        'text-field': ['get', 'name'],
        'text-font': FONT,
        'text-size': 12,
        'text-variable-anchor': ['top', 'right', 'left', 'bottom'],
        'text-radial-offset': 1.15,
      },
      paint: {
        'text-color': colours.ink,
        'text-halo-color': colours.paper,
        'text-halo-width': 1.6,
      },
    },
  ];
}
