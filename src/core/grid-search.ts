/** Exact least squares over measurable amounts: branch and bound, with a proven bound from below at every turn. */

import { type BoxFit, boxLeastSquares, type Squares, squaresOf } from "./box.ts";
import { type Grid, nearest } from "./grid.ts";
import { type AtMost, LimitsKept } from "./grid-limits.ts";
import { branchingOrder } from "./grid-order.ts";

export interface GridTask {
  /** One for each feed, as long as `wanted`; none negative. A feed whose column is all zeros stays out. */
  readonly columns: readonly (readonly number[])[];
  readonly wanted: readonly number[];
  readonly grids: readonly Grid[];
  readonly limits?: readonly AtMost[] | undefined;
  /** Relaxations to solve before giving up on the proof. */
  readonly mostNodes?: number | undefined;
}

export interface GridFit {
  readonly x: readonly number[];
  /** |columns·x − wanted|². */
  readonly misfit: number;
  /** Proven: no measurable amounts come closer than this. */
  readonly bound: number;
  /** Every branch was looked into or ruled out, so `x` is the best within rounding. */
  readonly complete: boolean;
  readonly nodes: number;
}

/** Enough for dozens of feeds that are no mixes of each other, and well below a tenth of a second. */
const MOST_NODES = 20_000;
/** Misfits that differ by less than this, relative to |wanted|² and to the misfit, count as equal. */
const SAME = 1e-12;
/** With limits and nothing yet found, doses that miss by more than tenfold are not looked for. */
const ABSURD_MISFIT = 100;

interface Node {
  readonly fit: BoxFit;
  readonly side: Int8Array;
  readonly left: Float64Array;
}

class Search {
  nodes = 0;
  misfit: number;
  x: number[] | null;
  /** Least bound of what was not looked into. */
  open = Number.POSITIVE_INFINITY;
  stopped = false;
  readonly order: readonly number[];
  private readonly most: Float64Array;
  private readonly squares: Squares;
  private readonly task: GridTask;
  private readonly size: number;
  private readonly chosen: number[];
  private readonly limits: LimitsKept;

  constructor(task: GridTask) {
    this.task = task;
    this.squares = squaresOf(task.columns, task.wanted);
    this.size = task.wanted.reduce((sum, value) => sum + value * value, 0);
    this.chosen = task.columns.map(() => 0);
    this.limits = new LimitsKept(task.limits ?? []);
    const nothing = this.limits.canKeep(0, 0, { free: [], most: [] });
    this.x = nothing ? this.chosen.slice() : null;
    this.misfit = nothing ? this.size : ABSURD_MISFIT * Math.max(this.size, 1);
    this.most = new Float64Array(task.columns.length);
    this.tighten();
    const root = this.relax(this.columnsFrom(0), this.squares.wanted, new Int8Array(task.columns.length));
    this.order = branchingOrder(this.squares, task.grids, root.fit.x);
  }

  cutoff(): number {
    return this.misfit - SAME * (this.size + this.misfit);
  }

  /**
   * No column has a negative entry, so a dose that alone overshoots an element by more than the best misfit allows
   * can be left out.
   */
  private tighten(): void {
    const reach = Math.sqrt(this.misfit);
    this.task.columns.forEach((column, j) => {
      const grid = this.task.grids[j] as Grid;
      let most = Number.POSITIVE_INFINITY;
      column.forEach((part, i) => {
        if (part > 0) most = Math.min(most, Math.max((this.task.wanted[i] as number) + reach, 0) / part);
      });
      // A feed that holds nothing wanted stays out.
      this.most[j] = most === Number.POSITIVE_INFINITY ? 0 : grid.at(grid.below(most * (1 + 1e-9)));
    });
  }

  private columnsFrom(depth: number): number[] {
    return depth === 0 ? this.task.columns.map((_, j) => j) : this.order.slice(depth);
  }

  private relax(free: readonly number[], left: Float64Array, from: Int8Array): Node {
    this.nodes += 1;
    const side = from.slice();
    for (const j of free) if (this.most[j] === 0) side[j] = -1;
    return { fit: boxLeastSquares(this.squares, free, left, { most: this.most, side }), side, left };
  }

  private leftAfter(left: Float64Array, j: number, amount: number): Float64Array {
    const column = this.squares.columns[j] as Float64Array;
    return left.map((value, i) => value - amount * (column[i] as number));
  }

  root(): Node {
    return this.relax(this.columnsFrom(0), this.squares.wanted, new Int8Array(this.task.columns.length));
  }

  /** Follows the nearest amount at each turn, so that there is something good to compare with. */
  dive(root: Node): void {
    let node = root;
    const taken: [number, number][] = [];
    for (let depth = 0; depth < this.order.length; depth++) {
      const j = this.order[depth] as number;
      const grid = this.task.grids[j] as Grid;
      const amount = grid.at(nearest(grid, node.fit.x[j] as number));
      if (!this.limits.canKeep(j, amount, { free: this.columnsFrom(depth + 1), most: this.most })) break;
      this.chosen[j] = amount;
      this.limits.take(j, amount);
      taken.push([j, amount]);
      node = this.relax(this.columnsFrom(depth + 1), this.leftAfter(node.left, j, amount), node.side);
    }
    for (const [j, amount] of taken) this.limits.take(j, -amount);
    if (taken.length === this.order.length) this.offer(node.fit.value);
    this.tighten();
  }

  private offer(misfit: number): void {
    if (this.x !== null && misfit >= this.misfit) return;
    if (misfit > this.misfit) return;
    this.misfit = misfit;
    this.x = this.chosen.slice();
  }

  /**
   * The least misfit over the columns still free is a convex function of the amount of the next one. Going outward
   * from its least, the first amount on a side whose bound is too high rules out all beyond it.
   */
  branch(node: Node, depth: number): void {
    if (depth === this.order.length) {
      this.offer(node.fit.value);
      return;
    }
    if (node.fit.value >= this.cutoff()) {
      // Within rounding of what is found already.
      this.open = Math.min(this.open, node.fit.bound);
      return;
    }
    const j = this.order[depth] as number;
    const grid = this.task.grids[j] as Grid;
    const last = Math.min(grid.below((this.most[j] as number) * (1 + 1e-12)), grid.last);
    const free = this.columnsFrom(depth + 1);
    const start = Math.min(grid.below(node.fit.x[j] as number), last);
    const look = (index: number): Node | null =>
      index < 0 || index > last ? null : this.relax(free, this.leftAfter(node.left, j, grid.at(index)), node.side);
    const sides = [
      { index: start, step: -1, next: look(start) },
      { index: start + 1, step: 1, next: look(start + 1) },
    ];
    for (;;) {
      let best = sides[0] as (typeof sides)[number];
      const other = sides[1] as (typeof sides)[number];
      const boundOf = (one: typeof best) => one.next?.fit.bound ?? Number.POSITIVE_INFINITY;
      if (boundOf(other) < boundOf(best)) best = other;
      const { next } = best;
      if (next === null || next.fit.bound >= this.cutoff()) return;
      if (this.nodes >= (this.task.mostNodes ?? MOST_NODES)) this.stopped = true;
      if (this.stopped) {
        this.open = Math.min(this.open, next.fit.bound);
        return;
      }
      const amount = grid.at(best.index);
      if (this.limits.canKeep(j, amount, { free, most: this.most })) {
        this.chosen[j] = amount;
        this.limits.take(j, amount);
        this.branch(next, depth + 1);
        this.limits.take(j, -amount);
      }
      best.index += best.step;
      best.next = look(best.index);
    }
  }
}

/**
 * The amounts, each of its grid, with the least |columns·x − wanted|² among those that keep the limits. Null when no
 * amounts keep them (or only such as miss tenfold). When the nodes run out, the best found and a bound that is still
 * proven come back, and `complete` is false.
 */
export function searchGrid(task: GridTask): GridFit | null {
  const search = new Search(task);
  const root = search.root();
  search.dive(root);
  search.branch(search.root(), 0);
  const { x, misfit, stopped, nodes } = search;
  if (x === null) return null;
  const bound = Math.max(Math.min(search.cutoff(), search.open), 0);
  return { x, misfit, bound, complete: !stopped, nodes };
}
