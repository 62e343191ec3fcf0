import { expect, test } from 'vitest';
import published from '../../../plan.schema.json?raw';
import { planJsonSchema } from './json-schema.ts';

test('the published schema is current (npm run schema -w @plugside/fireground writes it)', () => {
  expect(JSON.parse(published)).toEqual(JSON.parse(JSON.stringify(planJsonSchema())));
});

test('it asks for what has no default, and for nothing else', () => {
  const schema = planJsonSchema() as {
    required: string[];
    properties: { hydrants: { items: { required: string[] } } };
  };
  expect(schema.required).toEqual(['plugside', 'title', 'scene']);
  expect(schema.properties.hydrants.items.required).toEqual(['id', 'static', 'residual', 'flow']);
});
