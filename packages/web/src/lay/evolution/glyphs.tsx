/** Line drawings of the pieces, each about its own origin. */

interface RigGlyphProps {
  width: number;
  height: number;
  pumping: boolean;
}

/** Under this width [px] an engine is drawn without its compartments and windows. */
const PLAIN_BELOW_PX = 58;

/** An engine from the side: hose body, midship pump, crew cab. Its pump turns while it pumps. */
export function RigGlyph({ width: w, height: h, pumping }: RigGlyphProps) {
  const wheel = h * 0.19;
  const pumpR = Math.min(h * 0.24, w * 0.095);
  const pumpX = w * 0.55;
  const bed = h * 0.16;
  const roof = h * 0.02;
  const plain = w < PLAIN_BELOW_PX;
  return (
    <g className="rig">
      {!plain && (
        <path className="lights" d={`M${w * 0.73} ${roof - 4}h${w * 0.12}v4h${-w * 0.12}Z`} />
      )}
      <path
        className="body"
        d={`M0 ${h}V${bed}H${w * 0.66}V${roof}H${w * 0.89}L${w} ${h * 0.46}V${h}Z`}
      />
      <path className="detail" d={`M${w * 0.44} ${bed}V${h}M${w * 0.66} ${bed}V${h}`} />
      {!plain && (
        <path
          className="detail"
          d={`M${w * 0.05} ${h * 0.34}h${w * 0.15}v${h * 0.36}h${-w * 0.15}ZM${w * 0.24} ${h * 0.34}h${w * 0.15}v${h * 0.36}h${-w * 0.15}ZM${w * 0.7} ${h * 0.15}h${w * 0.08}v${h * 0.28}h${-w * 0.08}ZM${w * 0.81} ${h * 0.15}h${w * 0.06}l${w * 0.07} ${h * 0.28}h${-w * 0.13}Z`}
        />
      )}
      <circle className="pump" cx={pumpX} cy={h * 0.5} r={pumpR} />
      <g transform={`translate(${pumpX} ${h * 0.5})`}>
        <path
          className={pumping ? 'rotor turning' : 'rotor'}
          d={`M0 ${-pumpR * 0.62}Q${pumpR * 0.5} ${-pumpR * 0.2} 0 0Q${-pumpR * 0.5} ${pumpR * 0.2} 0 ${pumpR * 0.62}M${-pumpR * 0.62} 0Q${-pumpR * 0.2} ${-pumpR * 0.5} 0 0Q${pumpR * 0.2} ${pumpR * 0.5} ${pumpR * 0.62} 0`}
        />
      </g>
      <circle className="wheel" cx={w * 0.22} cy={h} r={wheel} />
      <circle className="wheel" cx={w * 0.82} cy={h} r={wheel} />
    </g>
  );
}

/** A hydrant from the front: bonnet, barrel, side caps; steamer to the right. */
export function HydrantGlyph({ unit }: { unit: number }) {
  return (
    <g className="fitting" transform={`scale(${unit})`}>
      <path className="body" d="M-11 34V-12q0 -13 11 -13t11 13V34Z" />
      <path className="body" d="M-16 34h32v7h-32Z" />
      <path className="detail" d="M-11 -12h22M-11 14h22" />
      <path className="body" d="M-3 -25v-5h6v5Z" />
      <path className="body" d="M11 -7h6v14h-6Z" />
      <path className="body" d="M-11 -7h-5v10h5Z" />
      <circle className="body" cx="0" cy="4" r="5" />
    </g>
  );
}

/** The assist valve, small: its body on the steamer, its handle and clapper state as a word beside it. */
export function AssistValveGlyph({ unit, clapperOpen }: { unit: number; clapperOpen: boolean }) {
  return (
    <g className="fitting" transform={`scale(${unit})`}>
      <path className="body" d="M-20 -13h40v26h-6v8h-8v-8h-10v8h-9v-8h-7Z" />
      <path
        className={clapperOpen ? 'clapper' : 'clapper clapper-shut'}
        d={clapperOpen ? 'M-2 -10h13' : 'M-2 -11v22'}
      />
    </g>
  );
}

/** Open water: its surface and a strainer. */
export function WaterGlyph({ unit }: { unit: number }) {
  return (
    <g className="fitting" transform={`scale(${unit})`}>
      <path
        className="surface"
        d="M-34 0q7 -6 14 0t14 0t14 0t14 0M-30 9q6 -5 12 0t12 0t12 0t12 0M-24 18q5 -4 10 0t10 0t10 0"
      />
    </g>
  );
}

/** A fitting in the line: one figure for wye, siamese, manifold. */
export function FittingGlyph({ kind }: { kind: string }) {
  if (kind === 'monitor') {
    return (
      <g className="fitting">
        <path className="body" d="M-7 8h14l-3 -8h-8Z" />
        <path className="body" d="M-3 0l11 -9l4 4l-10 8Z" />
      </g>
    );
  }
  if (kind === 'system') return <path className="fitting body" d="M-6 -8h12v16h-12Z" />;
  return <path className="fitting body" d="M-8 -5L8 -9V9L-8 5Z" />;
}

/** A nozzle, its stream when it flows. */
export function NozzleGlyph({ flowing, master }: { flowing: boolean; master: boolean }) {
  const size = master ? 1.3 : 1;
  return (
    <g className="nozzle" transform={`scale(${size})`}>
      <path className="body" d="M0 -3l9 -1.5v9l-9 -1.5Z" />
      {flowing ? (
        <path className="stream" d="M11 -2l9 -4M11 0h11M11 2l9 4" />
      ) : (
        <path className="detail" d="M4 -8v16" />
      )}
    </g>
  );
}
