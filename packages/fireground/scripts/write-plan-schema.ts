/** Writes plan.schema.json, for editors that complete and check YAML or JSON by a schema. */
import { writeFileSync } from 'node:fs';
import { planJsonSchema } from '@plugside/fireground';

const file = new URL('../plan.schema.json', import.meta.url);
writeFileSync(file, `${JSON.stringify(planJsonSchema(), null, 2)}\n`);
