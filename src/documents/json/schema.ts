/**
 * Shapes of what is given out as JSON. A shape is written once, with what every key means: the type that the builder
 * beside it must return is read off it, and so is the JSON Schema that ships. So the three cannot drift apart.
 */

/** A JSON Schema (draft 2020-12) together with the type of the values that it describes. */
export interface Shape<T> {
  readonly schema: JsonSchema;
  /** Never there: carries the type only. */
  readonly value?: T;
}

export interface JsonSchema {
  readonly [keyword: string]: unknown;
}

/** The type of the values that a shape describes. */
export type ValueOf<S> = S extends Shape<infer T> ? T : never;

/** What each key means is said where the key stands, in `description`. */
export function text(description: string): Shape<string> {
  return { schema: { description, type: 'string' } };
}

export function number(description: string): Shape<number> {
  return { schema: { description, type: 'number' } };
}

/** A count, or a quantity that is given out without decimals. */
export function whole(description: string): Shape<number> {
  return { schema: { description, type: 'integer' } };
}

export function yesNo(description: string): Shape<boolean> {
  return { schema: { description, type: 'boolean' } };
}

/** One of a few words. */
export function oneOf<const T extends string>(description: string, words: readonly T[]): Shape<T> {
  return { schema: { description, enum: words } };
}

/** The same, or null where it is not known or there is none. */
export function orNull<T>({ schema }: Shape<T>): Shape<T | null> {
  const { description, ...rest } = schema;
  return { schema: { description, anyOf: [rest, { type: 'null' }] } };
}

export function list<T>(description: string, items: Shape<T>): Shape<readonly T[]> {
  return { schema: { description, type: 'array', items: items.schema } };
}

type Values<P> = { readonly [K in keyof P]: ValueOf<P[K]> };

/** An object with exactly these keys. */
export function object<const P extends Record<string, Shape<unknown>>>(
  description: string,
  properties: P,
): Shape<Values<P>> {
  const schemas = Object.fromEntries(Object.entries(properties).map(([key, { schema }]) => [key, schema]));
  return {
    schema: {
      description,
      type: 'object',
      properties: schemas,
      required: Object.keys(properties),
      additionalProperties: false,
    },
  };
}

/** An object whose keys are names, each with the same kind of value. */
export function byName<T>(description: string, values: Shape<T>): Shape<Readonly<Record<string, T>>> {
  return { schema: { description, type: 'object', additionalProperties: values.schema } };
}

/** A whole number out of a figure, for quantities that nobody needs a fraction of: bits a second, packets. */
export function rounded(value: number): number;
export function rounded(value: number | undefined): number | null;
export function rounded(value: number | undefined): number | null {
  return value === undefined ? null : Math.round(value);
}

/** A figure without the noise that binary fractions leave behind the twelfth digit. */
export function figure(value: number): number;
export function figure(value: number | undefined): number | null;
export function figure(value: number | undefined): number | null {
  return value === undefined ? null : Number(value.toPrecision(12));
}
