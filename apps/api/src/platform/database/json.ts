import { Prisma } from '../../generated/prisma/client.ts';

/** A plain value as a JSON column takes it. What is read back goes through a reader of its own. */
export const toJson = (value: object): Prisma.InputJsonValue => value as Prisma.InputJsonValue;

/** The same for a column that may be empty: null is an empty column, not a JSON null. */
export const toJsonOrNull = (value: object | null | undefined): Prisma.InputJsonValue | typeof Prisma.DbNull =>
  value ? toJson(value) : Prisma.DbNull;
