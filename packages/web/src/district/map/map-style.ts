/** How the map is drawn: streets, buildings, water, and hydrants by class. */
import type { LayerSpecification, StyleSpecification } from 'maplibre-gl';
import type { District } from '../district.ts';
import { baseMapLayers, baseMapSources } from './base-map.ts';
import { FONT, growing, PICKED } from './expressions.ts';
import { hydrantLayers } from './hydrant-layers.ts';
import type { MapColours } from './map-colours.ts';
import { districtSources, SOURCE } from './map-sources.ts';

/**
 * The whole style. It names no `glyphs`: letters are drawn in the browser from the page's own
 * fonts, so the map asks nothing of any other server, but for a base map that the department names.
 */
export function mapStyle(district: District, colours: MapColours): StyleSpecification {
  return {
    version: 8,
    sources: { ...districtSources(district), ...baseMapSources(district.base.baseMap) },
    layers: [
      { id: 'paper', type: 'background', paint: { 'background-color': colours.paper } },
      ...baseMapLayers(district.base.baseMap, colours),
      ...groundLayers(colours),
      ...routeLayers(colours),
      ...hydrantLayers(colours),
      ...placeLayers(colours),
    ],
  };
}

function groundLayers(colours: MapColours): LayerSpecification[] {
  return [
    {
      id: 'street-edge',
      type: 'line',
      source: SOURCE.streets,
      filter: ['!', ['get', 'footOnly']],
      layout: { 'line-cap': 'round', 'line-join': 'round' },
      paint: { 'line-color': colours.hairline, 'line-width': growing(12, 1.5, 18, 26) },
    },
    {
      id: 'street',
      type: 'line',
      source: SOURCE.streets,
      filter: ['!', ['get', 'footOnly']],
      minzoom: 13,
      layout: { 'line-cap': 'round', 'line-join': 'round' },
      paint: { 'line-color': colours.sheet, 'line-width': growing(13, 0.8, 18, 23) },
    },
    {
      id: 'street-foot',
      type: 'line',
      source: SOURCE.streets,
      filter: ['get', 'footOnly'],
      minzoom: 13,
      paint: { 'line-color': colours.line, 'line-width': 1, 'line-dasharray': [3, 2] },
    },
    {
      id: 'building',
      type: 'fill',
      source: SOURCE.buildings,
      filter: ['==', ['geometry-type'], 'Polygon'],
      minzoom: 12,
      paint: {
        'fill-color': ['case', PICKED, colours.water, colours.ground],
        'fill-opacity': ['case', PICKED, 0.35, 1],
      },
    },
    {
      id: 'building-edge',
      type: 'line',
      source: SOURCE.buildings,
      filter: ['==', ['geometry-type'], 'Polygon'],
      minzoom: 13,
      paint: {
        'line-color': ['case', PICKED, colours.water, colours.groundLine],
        'line-width': ['case', PICKED, 2.5, 0.75],
      },
    },
    {
      id: 'building-point',
      type: 'circle',
      source: SOURCE.buildings,
      filter: ['==', ['geometry-type'], 'Point'],
      minzoom: 13,
      paint: {
        'circle-radius': growing(13, 2.5, 18, 8),
        'circle-color': ['case', PICKED, colours.water, colours.ground],
        'circle-stroke-color': ['case', PICKED, colours.water, colours.groundLine],
        'circle-stroke-width': 1,
      },
    },
    // Under the lay and the hydrants: a name must not cut the line.
    {
      id: 'street-name',
      type: 'symbol',
      source: SOURCE.streets,
      minzoom: 14.5,
      filter: ['!=', ['get', 'name'], ''],
      layout: {
        'symbol-placement': 'line',
        'text-field': ['get', 'name'],
        'text-font': FONT,
        'text-size': growing(14.5, 11, 18, 15),
        'symbol-spacing': 320,
      },
      paint: {
        'text-color': colours.inkSoft,
        'text-halo-color': colours.sheet,
        'text-halo-width': 1.6,
      },
    },
  ];
}

function routeLayers(colours: MapColours): LayerSpecification[] {
  const round = { 'line-cap': 'round', 'line-join': 'round' } as const;
  return [
    {
      id: 'route-edge',
      type: 'line',
      source: SOURCE.route,
      layout: round,
      paint: { 'line-color': colours.sheet, 'line-width': 9 },
    },
    {
      id: 'route',
      type: 'line',
      source: SOURCE.route,
      layout: round,
      paint: { 'line-color': colours.lay, 'line-width': 5 },
    },
    {
      id: 'route-length',
      type: 'symbol',
      source: SOURCE.route,
      filter: ['has', 'text'],
      layout: {
        'text-field': ['get', 'text'],
        'text-font': ['IBM Plex Sans Condensed SemiBold'],
        'text-size': 15,
        'text-offset': [0, -1],
        'text-allow-overlap': true,
      },
      paint: {
        'text-color': colours.lay,
        'text-halo-color': colours.sheet,
        'text-halo-width': 2,
      },
    },
    {
      // Wider than it looks: a finger must find it.
      id: 'route-grip',
      type: 'line',
      source: SOURCE.route,
      filter: ['has', 'index'],
      layout: round,
      paint: { 'line-color': colours.water, 'line-width': 26, 'line-opacity': 0 },
    },
  ];
}

function placeLayers(colours: MapColours): LayerSpecification[] {
  const halo = { 'text-halo-color': colours.paper, 'text-halo-width': 1.6 } as const;
  return [
    {
      id: 'building-name',
      type: 'symbol',
      source: SOURCE.buildings,
      filter: ['get', 'named'],
      minzoom: 16,
      layout: {
        'text-field': ['get', 'name'],
        'text-font': FONT,
        'text-size': 12.5,
        'text-max-width': 7,
      },
      paint: { 'text-color': colours.ink, ...halo, 'text-halo-color': colours.ground },
    },
    {
      id: 'water-source',
      type: 'symbol',
      source: SOURCE.water,
      layout: {
        'icon-image': 'water-source',
        'icon-allow-overlap': true,
        'text-field': ['step', ['zoom'], '', 13.5, ['get', 'name']],
        'text-font': FONT,
        'text-size': 13,
        'text-offset': [0, 1.1],
        'text-anchor': 'top',
        'text-optional': true,
      },
      paint: { 'text-color': colours.ink, ...halo },
    },
    {
      id: 'station',
      type: 'symbol',
      source: SOURCE.stations,
      layout: {
        'icon-image': 'station',
        'icon-allow-overlap': true,
        'text-field': ['step', ['zoom'], '', 12.5, ['get', 'name']],
        'text-font': FONT,
        'text-size': 13.5,
        'text-offset': [0, 1.2],
        'text-anchor': 'top',
        'text-optional': true,
      },
      paint: { 'text-color': colours.ink, ...halo },
    },
  ];
}
