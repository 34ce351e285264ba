/** Version of the arithmetic. A golden number that moves without a change here fails a test. */
export const ENGINE = '0.3.0';
