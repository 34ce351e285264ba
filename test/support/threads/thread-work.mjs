// Work for the thread pool's tests.
export const double = ({ value }) => ({ value: value * 2 });
export const forever = () => {
  for (;;);
};
export const greedy = () => {
  const kept = [];
  for (;;) kept.push(Array.from({ length: 10_000 }, (_, index) => ({ index })));
};
export const broken = () => {
  throw new RangeError('no such wall');
};
export const slow = async ({ ms }) => {
  await new Promise((settle) => setTimeout(settle, ms));
  return ms;
};
