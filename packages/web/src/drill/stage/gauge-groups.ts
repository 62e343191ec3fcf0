import type { DrillView, GaugeView } from '@plugside/drill';

export interface GaugeGroup {
  /** Of the engine, where there are several. */
  name?: string;
  gauges: GaugeView[];
}

/** Gauges by engine where a role stands at several; all together else. */
export function gaugeGroups({ gauges, pumps }: DrillView): GaugeGroup[] {
  if (pumps.length < 2) return gauges.length > 0 ? [{ gauges }] : [];
  const groups: GaugeGroup[] = pumps.map(({ rigId, label }) => ({
    name: label,
    gauges: gauges.filter(({ id }) => id.startsWith(`${rigId}.`)),
  }));
  const rest = gauges.filter((gauge) => !groups.some((group) => group.gauges.includes(gauge)));
  return [...groups, { gauges: rest }].filter((group) => group.gauges.length > 0);
}

/** A gauge's name without its engine's, which stands above it or is the only one. */
export function gaugeName({ pumps }: DrillView, { label }: GaugeView): string {
  const pump = pumps.find((one) => label.startsWith(`${one.label} `));
  if (!pump) return label;
  const rest = label.slice(pump.label.length + 1);
  return `${rest.charAt(0).toUpperCase()}${rest.slice(1)}`;
}
