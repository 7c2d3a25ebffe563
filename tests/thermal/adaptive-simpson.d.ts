declare module 'integrate-adaptive-simpson' {
  /** ∫ f from a to b, by a general-purpose library. */
  export default function integrate(
    f: (x: number) => number,
    a: number,
    b: number,
    tolerance?: number,
    maximumDepth?: number,
  ): number;
}
