import fc from 'fast-check';
import { z } from 'zod';

type JsonSchema = {
  readonly type?: string | readonly string[];
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly anyOf?: readonly JsonSchema[];
  readonly oneOf?: readonly JsonSchema[];
  readonly allOf?: readonly JsonSchema[];
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly required?: readonly string[];
  readonly items?: JsonSchema;
  readonly prefixItems?: readonly JsonSchema[];
  readonly minimum?: number;
  readonly maximum?: number;
  readonly pattern?: string;
  readonly additionalProperties?: JsonSchema | boolean;
};

/** What a field of a name may well hold: real keys of the farm, dates, codes. */
export type Known = (field: string) => fc.Arbitrary<unknown> | null;

const nastyText = fc.constantFrom(
  '',
  ' ',
  '0',
  '-1',
  '1e999',
  'NaN',
  'null',
  "'; DROP TABLE bed; --",
  '=1+1',
  '\u0000',
  '\uFFFE',
  '💧'.repeat(40),
  'x'.repeat(5000),
  '2026-02-30',
  '0000-00-00',
  '../../etc/passwd',
  '__proto__',
  '<script>1</script>',
  '9'.repeat(30),
);
const nastyNumber = fc.constantFrom(0, -0, 1, -1, 0.1, 1e-12, 1e12, 1e308, -1e308, 2 ** 53, 2 ** 31, 1.5, 99, 1000);
const date = fc
  .integer({ min: 2020, max: 2030 })
  .chain((y) =>
    fc
      .tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 28 }))
      .map(([m, d]) => `${y}-${String(m).padStart(2, '0')}-${String(d).padStart(2, '0')}`),
  );
const junk: fc.Arbitrary<unknown> = fc.oneof(
  nastyText,
  nastyNumber,
  fc.constantFrom(null, true, [], {}),
  fc.string({ maxLength: 12 }),
);

function textOf(schema: JsonSchema, field: string, known: Known): fc.Arbitrary<unknown> {
  const own = known(field);
  const usual = /date|day|from|to$/i.test(field) ? date : fc.string({ maxLength: 20 });
  const fitting = schema.pattern === undefined ? usual : fc.oneof(date, fc.stringMatching(new RegExp(schema.pattern)));
  return own === null
    ? fc.oneof({ weight: 4, arbitrary: fitting }, { weight: 1, arbitrary: nastyText })
    : fc.oneof({ weight: 5, arbitrary: own }, { weight: 1, arbitrary: nastyText });
}

/** Inputs that fit a JSON schema most of the time, and break it in one place or another the rest. */
function fromSchema(schema: JsonSchema, field: string, known: Known, depth: number): fc.Arbitrary<unknown> {
  if (depth > 6) return junk;
  const sound = (): fc.Arbitrary<unknown> => {
    if (schema.const !== undefined) return fc.constant(schema.const);
    if (schema.enum !== undefined) return fc.constantFrom(...schema.enum);
    const choices = schema.anyOf ?? schema.oneOf;
    if (choices !== undefined) return fc.oneof(...choices.map((each) => fromSchema(each, field, known, depth + 1)));
    if (schema.allOf !== undefined && schema.allOf[0] !== undefined) return fromSchema(schema.allOf[0], field, known, depth + 1);
    const type = Array.isArray(schema.type) ? schema.type[0] : schema.type;
    switch (type) {
      case 'object': {
        const properties = Object.entries(schema.properties ?? {});
        if (properties.length === 0 && typeof schema.additionalProperties === 'object') {
          return fc.dictionary(fc.string({ maxLength: 8 }), fromSchema(schema.additionalProperties, field, known, depth + 1), {
            maxKeys: 3,
          });
        }
        return fc.record(Object.fromEntries(properties.map(([name, each]) => [name, fromSchema(each, name, known, depth + 1)])), {
          requiredKeys: [...(schema.required ?? [])],
        });
      }
      case 'array':
        if (schema.prefixItems !== undefined)
          return fc.tuple(...schema.prefixItems.map((each) => fromSchema(each, field, known, depth + 1)));
        return fc.array(fromSchema(schema.items ?? {}, field, known, depth + 1), { maxLength: 4 });
      case 'integer':
        return fc.oneof(
          fc.integer({ min: Math.max(schema.minimum ?? -3, -1000), max: Math.min(schema.maximum ?? 400, 2000) }),
          nastyNumber,
        );
      case 'number':
        return fc.oneof(
          fc.double({ min: Math.max(schema.minimum ?? -2, -1000), max: Math.min(schema.maximum ?? 100, 1000), noNaN: true }),
          nastyNumber,
        );
      case 'boolean':
        return fc.boolean();
      case 'null':
        return fc.constant(null);
      case 'string':
        return textOf(schema, field, known);
      default:
        return junk;
    }
  };
  return fc.oneof({ weight: 24, arbitrary: sound() }, { weight: 1, arbitrary: junk });
}

/** Inputs for a procedure, from its own schema. */
export function arbitraryInput(schema: z.ZodType, known: Known): fc.Arbitrary<unknown> {
  const json = z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' }) as JsonSchema;
  if (Object.keys(json).filter((name) => name !== '$schema').length === 0)
    return fc.oneof({ weight: 6, arbitrary: fc.constant(undefined) }, { weight: 1, arbitrary: junk });
  return fromSchema(json, '', known, 0);
}
