/** Ends every page, paper and answer that predicts. */
export const CAVEAT = 'Prediction from the data stated; not a warranty; verify on a test strip and a first piece.';
