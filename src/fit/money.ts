/** A price as it is shown, never converted. @example money(9500, 'EUR') // '9,500 EUR' */
export const money = (price: number, currency: string): string => `${price.toLocaleString('en-GB')} ${currency}`;

/** The same with where it comes from; null is a price that nobody entered. `demo`: invented for demonstration. */
export const moneyAsEntered = (price: number | null, currency: string, demo: boolean): string =>
  price === null ? 'price not entered' : `${money(price, currency)}${demo ? ', invented for demonstration' : ' as entered'}`;
