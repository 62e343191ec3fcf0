import { useMemo } from 'react';
import { type LabelRequest, placeLabels, type Rect, type Side } from './label-placement.ts';
import { textWidth } from './text-width.ts';

export interface LabelSpec {
  id: string;
  x: number;
  y: number;
  alternates?: readonly (readonly [x: number, y: number])[];
  others?: readonly Rect[];
  /** One or more lines of text. */
  lines: readonly string[];
  look?: 'plain' | 'strong' | 'water' | 'soft' | 'warning';
  priority: number;
  sides: readonly Side[];
  gap?: number;
  reach?: number;
}

interface LabelLayerProps {
  labels: readonly LabelSpec[];
  obstacles: readonly Rect[];
  soft: readonly Rect[];
  bounds: Rect;
  textPx: number;
  /** Rises when the fonts have arrived and widths must be taken anew. */
  fontsReady: boolean;
}

const LINE_HEIGHT = 1.22;

/** Writes labels where the placement pass finds room for them. */
export function LabelLayer(props: LabelLayerProps) {
  const { labels, obstacles, soft, bounds, textPx, fontsReady } = props;
  const placed = useMemo(() => {
    const requests = labels.map((label): LabelRequest => {
      const weight = label.look === 'plain' || label.look === 'soft' ? 500 : 600;
      const widths = label.lines.map((line) => textWidth(line, textPx, weight));
      return {
        ...label,
        width: Math.max(...widths) + (fontsReady ? 4 : 8),
        height: label.lines.length * textPx * LINE_HEIGHT,
        gap: label.gap ?? 6,
        reach: label.reach ?? 40,
      };
    });
    return placeLabels(requests, obstacles, soft, bounds);
  }, [labels, obstacles, soft, bounds, textPx, fontsReady]);

  return (
    <g className="labels">
      {placed.map((place) => {
        const label = labels.find((one) => one.id === place.id)!;
        const middle = place.x + place.width / 2;
        return (
          <g key={place.id} className={`label label-${label.look ?? 'plain'}`}>
            {place.leader && (
              <line
                className="leader"
                x1={Math.min(Math.max(place.at[0], place.x), place.x + place.width)}
                y1={Math.min(Math.max(place.at[1], place.y), place.y + place.height)}
                x2={place.at[0]}
                y2={place.at[1]}
              />
            )}
            {label.lines.map((line, i) => (
              <text
                // biome-ignore lint/suspicious/noArrayIndexKey: the lines of one label keep their order
                key={i}
                x={middle}
                y={place.y + textPx * LINE_HEIGHT * (i + 0.5)}
                dy="0.34em"
                textAnchor="middle"
                fontSize={textPx}
              >
                {line}
              </text>
            ))}
          </g>
        );
      })}
    </g>
  );
}
