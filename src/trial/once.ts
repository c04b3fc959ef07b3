/** `make`, called when it is first asked for and kept from then on. */
export const once = <T extends object>(make: () => T): (() => T) => {
  let made: T | null = null;
  return () => (made ??= make());
};
