import type { VerbModule } from './answer';
import type { VerbName } from './optionSpecs';

/** The verbs that answer one question; each is loaded when it is asked for. */
export async function loadVerb(name: Exclude<VerbName, 'batch'>): Promise<VerbModule> {
  switch (name) {
    case 'check':
      return import('./check');
    case 'readings':
      return import('./readings');
    case 'sweep':
      return import('./sweep');
    case 'influence':
      return import('./influence');
    case 'ways':
      return import('./ways');
    case 'reach':
      return import('./reach');
    case 'map':
      return import('./map');
    case 'joints':
      return import('./joints');
    case 'stroke':
      return import('./stroke');
    case 'loads':
      return import('./loads');
    case 'clearance':
      return import('./clearance');
    case 'keep-out':
      return import('./keepOut');
    case 'template':
      return import('./template');
    case 'sheet':
      return import('./sheet');
    case 'points':
      return import('./points');
    case 'schema':
      return import('./schema');
  }
}
