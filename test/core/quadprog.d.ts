/** The one function of npm quadprog that the tests use. Arrays count from 1, as in the Fortran behind it. */
declare module "quadprog" {
  interface QuadraticSolution {
    /** From index 1. */
    solution: number[];
    value: number[];
    message: string;
  }
  /** min −dᵀx + ½ xᵀDx with Aᵀx ≥ b. */
  export function solveQP(Dmat: number[][], dvec: number[], Amat: number[][], bvec: number[]): QuadraticSolution;
}
