/** The functions of jstat that the tests check against; the package has no types. */
declare module 'jstat' {
  const jstat: {
    readonly jStat: {
      readonly gamma: { inv(p: number, shape: number, scale: number): number };
      sum(values: readonly number[]): number;
      mean(values: readonly number[]): number;
    };
  };
  export default jstat;
}
