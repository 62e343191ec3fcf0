/** Which of a department's values a limit comes from. */
import { hoseCatalogue, type LimitCheck, type LimitValues, type Plan } from '@plugside/fireground';

/** The value to change for a limit; null where it is the piece's own (a pump's capability, a hose's marking). */
export function limitKey(check: LimitCheck, plan: Plan): keyof LimitValues | null {
  switch (check.kind) {
    case 'main residual':
      return 'mainResidualPsi';
    case 'booster intake':
      return 'boosterIntakePsi';
    case 'relay intake':
    case 'attack intake':
      return 'hoseFedIntakePsi';
    case 'draft vacuum':
      return 'draftVacuumInHg';
    case 'hose velocity':
      return 'hoseVelocityFtS';
    case 'hilltop pressure':
      return 'hilltopPsi';
    case 'hose pressure': {
      const line = plan.lines.find((one) => one.id === check.piece);
      if (!line || line.limitPsi !== undefined) return null;
      const supply = hoseCatalogue[line.hose].limitClass === 'supply';
      return supply ? 'supplyHosePsi' : 'attackHosePsi';
    }
    case 'pump capability':
    case 'scene pumps':
    case 'nozzle pressure':
      return null;
  }
}
