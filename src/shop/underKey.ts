/** What lies under `key` where the data are an answer of this program; else the whole. */
export const underKey = (key: string, data: unknown): unknown =>
  typeof data === 'object' && data !== null && key in data ? (data as Readonly<Record<string, unknown>>)[key] : data;
