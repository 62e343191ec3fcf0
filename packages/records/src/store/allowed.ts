/** What a field may hold, in words, read off its JSON Schema. */
import { z } from 'zod';
import { type Kind, recordSchemas } from '../model/index.ts';

type Node = z.core.JSONSchema.JSONSchema;
type Path = readonly PropertyKey[];

const schemas = new Map<Kind, Node>();

/** For instance `0 to 500`, `one of: in service, out of service`. */
export function allowedAt(kind: Kind, path: Path): string {
  const node = nodeAt(schemaOf(kind), path);
  return node ? inWords(node) : 'nothing: there is no such field';
}

export function fieldNames(kind: Kind): string[] {
  return Object.keys(recordSchemas[kind].shape);
}

function schemaOf(kind: Kind): Node {
  const known = schemas.get(kind);
  if (known) return known;
  const made = z.toJSONSchema(recordSchemas[kind], { io: 'input' }) as Node;
  schemas.set(kind, made);
  return made;
}

function nodeAt(root: Node, path: Path): Node | undefined {
  let node: Node | undefined = root;
  for (const step of path) node = node && childOf(node, step);
  return node;
}

function childOf(node: Node, step: PropertyKey): Node | undefined {
  if (typeof step === 'number') {
    return asNode(node.prefixItems?.[step]) ?? asNode(node.items as Node | undefined);
  }
  return asNode(node.properties?.[String(step)]) ?? asNode(node.additionalProperties);
}

function asNode(node: Node | boolean | undefined): Node | undefined {
  return typeof node === 'object' ? node : undefined;
}

function inWords(node: Node): string {
  if (node.enum) return `one of: ${node.enum.join(', ')}`;
  switch (node.type) {
    case 'integer':
      return `a whole number, ${range(node)}`;
    case 'number':
      return `a number, ${range(node)}`;
    case 'boolean':
      return 'true or false';
    case 'string':
      return stringInWords(node);
    case 'array':
      return `a list of ${count(node.minItems, node.maxItems)}`;
    case 'object':
      return node.required?.length
        ? `an object with ${node.required.join(', ')}`
        : 'an object, its values by name';
    default:
      return 'any value that JSON can hold';
  }
}

function stringInWords(node: Node): string {
  if (node.format === 'date') return 'a date as YYYY-MM-DD';
  if (node.format === 'ulid' || node.pattern?.includes('A-HJKMNP')) return "another record's id";
  return `text of ${count(node.minLength, node.maxLength)} characters`;
}

function range(node: Node): string {
  const { minimum, exclusiveMinimum, maximum } = node;
  if (exclusiveMinimum !== undefined && maximum !== undefined) {
    return `more than ${exclusiveMinimum}, up to ${maximum}`;
  }
  if (exclusiveMinimum !== undefined) return `more than ${exclusiveMinimum}`;
  return `${minimum ?? 'any'} to ${maximum ?? 'any'}`;
}

function count(least: number | undefined, most: number | undefined): string {
  if (most === undefined) return `at least ${least ?? 0}`;
  return `${least ?? 0} to ${most}`;
}
