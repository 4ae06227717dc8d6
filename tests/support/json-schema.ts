/**
 * Holds a value against a JSON schema (draft 2020-12), for the part of that language our own schemas use. A word it does not know
 * throws, so that nothing in a schema goes unchecked.
 */
export interface Schema {
  readonly [word: string]: unknown;
}

type Check = (argument: never, value: unknown, at: string, root: Schema, schema: Schema) => string[];

/**
 * @param schema  the whole schema; `$ref` leads to its `$defs`
 * @returns one sentence for each fault, with the place of the value; none when it fits
 */
export function schemaFaults(schema: Schema, value: unknown): string[] {
  return faultsAt(schema, value, 'top', schema);
}

function faultsAt(schema: Schema, value: unknown, at: string, root: Schema): string[] {
  const faults: string[] = [];
  for (const [word, argument] of Object.entries(schema)) {
    const check = CHECKS[word];
    if (check === undefined) throw new Error(`the schema uses ${word}, which is not checked here`);
    faults.push(...check(argument as never, value, at, root, schema));
  }
  return faults;
}

const nothing: Check = () => [];
const isList = (value: unknown): value is readonly unknown[] => Array.isArray(value);
const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const CHECKS: Readonly<Record<string, Check>> = {
  $schema: nothing,
  $id: nothing,
  $defs: nothing,
  title: nothing,
  description: nothing,
  $ref: (name: string, value, at, root) => faultsAt(definition(root, name), value, at, root),
  type: (types: string | readonly string[], value, at) =>
    [types].flat().some((type) => isOfType(type, value))
      ? []
      : [`${at}: ${brief(value)} is not of type ${String(types)}`],
  const: (only: unknown, value, at) => (value === only ? [] : [`${at}: ${brief(value)} is not ${brief(only)}`]),
  enum: (choices: readonly unknown[], value, at) =>
    choices.includes(value) ? [] : [`${at}: ${brief(value)} is none of ${choices.map(brief).join(', ')}`],
  minimum: (least: number, value, at) =>
    typeof value === 'number' && value < least ? [`${at}: ${value} is under ${least}`] : [],
  maximum: (most: number, value, at) =>
    typeof value === 'number' && value > most ? [`${at}: ${value} is over ${most}`] : [],
  exclusiveMinimum: (least: number, value, at) =>
    typeof value === 'number' && value <= least ? [`${at}: ${value} is not over ${least}`] : [],
  exclusiveMaximum: (most: number, value, at) =>
    typeof value === 'number' && value >= most ? [`${at}: ${value} is not under ${most}`] : [],
  pattern: (pattern: string, value, at) =>
    typeof value === 'string' && !new RegExp(pattern, 'u').test(value)
      ? [`${at}: ${brief(value)} is not like ${pattern}`]
      : [],
  minLength: (least: number, value, at) =>
    typeof value === 'string' && value.length < least ? [`${at}: ${brief(value)} is under ${least} letters`] : [],
  minItems: (least: number, value, at) =>
    isList(value) && value.length < least ? [`${at}: ${value.length} items, at least ${least} are needed`] : [],
  maxItems: (most: number, value, at) =>
    isList(value) && value.length > most ? [`${at}: ${value.length} items, at most ${most} are allowed`] : [],
  items: (each: Schema, value, at, root) =>
    isList(value) ? value.flatMap((item, i) => faultsAt(each, item, `${at}[${i}]`, root)) : [],
  required: (names: readonly string[], value, at) =>
    isObject(value) ? names.filter((name) => !(name in value)).map((name) => `${at}: ${name} is missing`) : [],
  properties: (known: Readonly<Record<string, Schema>>, value, at, root) =>
    isObject(value)
      ? Object.entries(known).flatMap(([name, own]) =>
          name in value ? faultsAt(own, value[name], `${at}.${name}`, root) : [],
        )
      : [],
  additionalProperties: (each: Schema, value, at, root, { properties }) =>
    isObject(value)
      ? Object.entries(value)
          .filter(([name]) => !(isObject(properties) && name in properties))
          .flatMap(([name, inner]) => faultsAt(each, inner, `${at}.${name}`, root))
      : [],
  anyOf: (choices: readonly Schema[], value, at, root) => {
    const faults = choices.map((choice) => faultsAt(choice, value, at, root));
    if (faults.some((list) => list.length === 0)) return [];
    return [`${at}: fits none of ${choices.length} choices: ${faults.map((list) => list[0]).join('; or ')}`];
  },
};

function definition(root: Schema, reference: string): Schema {
  const name = /^#\/\$defs\/(\w+)$/.exec(reference)?.[1];
  const found = name !== undefined && isObject(root.$defs) ? root.$defs[name] : undefined;
  if (!isObject(found)) throw new Error(`the schema refers to ${reference}, which it does not define`);
  return found;
}

function isOfType(type: string, value: unknown): boolean {
  switch (type) {
    case 'null':
      return value === null;
    case 'array':
      return isList(value);
    case 'object':
      return isObject(value);
    case 'integer':
      return Number.isInteger(value);
    case 'number':
    case 'string':
    case 'boolean':
      return typeof value === type;
    default:
      throw new Error(`the schema names a type ${type}`);
  }
}

function brief(value: unknown): string {
  const text = JSON.stringify(value) ?? 'undefined';
  return text.length > 60 ? `${text.slice(0, 60)}…` : text;
}
