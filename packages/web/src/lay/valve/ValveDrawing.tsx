import type { AssistValveState } from '@plugside/fireground';
import { useUnits } from '../../editing/use-units.ts';
import { streamPx } from './stream-width.ts';

interface ValveDrawingProps {
  valve: AssistValveState;
  label: string;
  /** Width on the page [px]: a narrow drawing has its port names set larger. */
  widthPx: number;
}

const WIDTH = 560;

/** The valve cut open: four ports, the clapper, the plug that the handle turns. */
export function ValveDrawing({ valve, label, widthPx }: ValveDrawingProps) {
  const units = useUnits();
  const inGpm = valve.clapperGpm + valve.suctionGpm;
  const outGpm = valve.clapperGpm + valve.dischargeGpm;
  const most = Math.max(inGpm, outGpm, 1);
  const open = valve.clapper === 'open';
  const boost = valve.handle === 'boost';
  const psi = (value: number | undefined) =>
    value === undefined ? '' : units.text(value, 'pressure');
  const gpm = (value: number) => (value < 0.5 ? 'no flow' : units.text(value, 'flow'));
  // Text keeps its size on the page while the drawing shrinks; below that the picture grows taller.
  const text = Math.max(15, (14 * WIDTH) / Math.max(widthPx, 1));
  const step = text * 1.22;
  return (
    <svg
      className="valve-drawing"
      viewBox={`0 0 ${WIDTH} ${300 + step}`}
      role="img"
      aria-label={label}
      fontSize={text}
    >
      <path
        className="chamber"
        d="M0 92H176V70H330V92H560V140H392V300H348V178H318V140H300V178H222V300H178V140H0Z"
      />
      <Stream d="M0 116H170" px={streamPx(inGpm, most)} />
      <Stream d="M160 116H400" px={streamPx(valve.clapperGpm, most)} />
      <Stream d="M392 116H560" px={streamPx(outGpm, most)} />
      <Stream d="M150 116Q200 116 200 160V300" px={streamPx(valve.suctionGpm, most)} />
      <Stream d="M370 300V160Q370 116 420 116" px={streamPx(valve.dischargeGpm, most)} />
      <path
        className="casting"
        d="M0 92H176V70H330V92H560M0 140H178V300M222 300V178H300V140H318V178H348V300M392 300V140H560"
      />
      <circle className="hinge" cx="270" cy="80" r="5" />
      <path
        className={open ? 'clapper-leaf' : 'clapper-leaf clapper-leaf-shut'}
        d={open ? 'M270 80L324 88' : 'M270 80V140'}
      />
      <g transform="translate(200 196)">
        <circle className="plug" r="25" />
        <path className="plug-bore" d={boost ? 'M-8 -24V24M8 -24V24' : 'M-24 -8H24M-24 8H24'} />
        <path className="lever" d={boost ? 'M0 0V-42' : 'M0 0H58'} />
        <circle className="lever-knob" cx={boost ? 0 : 58} cy={boost ? -42 : 0} r="7" />
      </g>
      <text
        className={open ? 'port-name' : 'port-name clapper-word-shut'}
        x="253"
        y={62}
        textAnchor="middle"
      >
        clapper {valve.clapper}
      </text>
      <Port
        x={4}
        y={84}
        below={140 + step}
        step={step}
        name="hydrant"
        psi={psi(valve.hydrantPsi)}
        gpm={gpm(inGpm)}
      />
      <Port
        x={556}
        y={84}
        below={140 + step}
        step={step}
        end
        name="supply"
        psi={psi(valve.supplyPsi)}
        gpm={gpm(outGpm)}
      />
      <Port
        x={168}
        y={300 + step * 0.9}
        below={300 - step * 1.1}
        step={step}
        end
        name="pump suction"
        psi={psi(valve.suctionPsi)}
        gpm={gpm(valve.suctionGpm)}
      />
      <Port
        x={402}
        y={300 + step * 0.9}
        below={300 - step * 1.1}
        step={step}
        name="pump discharge"
        psi={psi(valve.dischargePsi)}
        gpm={gpm(valve.dischargeGpm)}
      />
    </svg>
  );
}

interface PortProps {
  x: number;
  y: number;
  /** Where the pressure is written; the flow stands a line under it. */
  below: number;
  step: number;
  name: string;
  psi: string;
  gpm: string;
  end?: boolean;
}

function Port({ x, y, below, step, name, psi, gpm, end }: PortProps) {
  const textAnchor = end ? 'end' : 'start';
  return (
    <g textAnchor={textAnchor}>
      <text className="port-name" x={x} y={y}>
        {name}
      </text>
      <text className="port-number" x={x} y={below}>
        {psi}
      </text>
      <text className="port-flow" x={x} y={below + step}>
        {gpm}
      </text>
    </g>
  );
}

function Stream({ d, px }: { d: string; px: number }) {
  if (px === 0) return null;
  return (
    <g className="stream-in-valve">
      <path className="water" d={d} strokeWidth={px} />
      <path
        className="current"
        d={d}
        strokeWidth={Math.max(2, px * 0.2)}
        style={{ animationDuration: '0.9s' }}
      />
    </g>
  );
}
