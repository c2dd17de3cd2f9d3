/** Exact least squares over measurable amounts: branch and bound, with a proven bound from below at every turn. */

import { type BoxFit, boxLeastSquares, type Squares, squaresOf } from "./box.ts";
import { type Grid, nearest } from "./grid.ts";
import { type AtMost, LimitsKept, limitCosts } from "./grid-limits.ts";
import { branchingOrder, worthwhileMost } from "./grid-order.ts";

export interface GridTask {
  /** One for each feed, as long as `wanted`; none negative. A feed whose column is all zeros stays out. */
  readonly columns: readonly (readonly number[])[];
  readonly wanted: readonly number[];
  readonly grids: readonly Grid[];
  /** Limits come through searchLimitedGrid, which finds their multipliers. */
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
  /** Proven: nothing below this node has a misfit below it. */
  readonly bound: number;
  /** Not below the least that the relaxation gives. */
  readonly value: number;
  readonly side: Int8Array;
  readonly left: Float64Array;
  /** What the settled columns cost by the limits. */
  readonly spent: number;
}

class Search {
  nodes = 0;
  misfit: number;
  x: number[] | null;
  /** Least bound of what was not looked into. */
  open = Number.POSITIVE_INFINITY;
  stopped = false;
  readonly order: readonly number[];
  private most: Float64Array;
  private readonly squares: Squares;
  private readonly task: GridTask;
  private readonly size: number;
  private readonly chosen: number[];
  private readonly limits: LimitsKept;
  /** What the limits cost for each unit of a column, and in all: they cost nothing where all are kept. */
  private readonly slope: Float64Array;
  private readonly base: number;

  /** `multipliers`: one for each limit, none negative; any such give valid bounds, those of the relaxation the best. */
  constructor(task: GridTask, multipliers: readonly number[]) {
    this.task = task;
    const limits = task.limits ?? [];
    const { slope, base } = limitCosts(limits, multipliers, task.columns.length);
    this.slope = slope;
    this.base = base;
    this.squares = squaresOf(task.columns, task.wanted);
    this.size = task.wanted.reduce((sum, value) => sum + value * value, 0);
    this.chosen = task.columns.map(() => 0);
    this.limits = new LimitsKept(limits);
    const nothing = this.limits.canKeep(0, 0, { free: [], most: [] });
    this.x = nothing ? this.chosen.slice() : null;
    this.misfit = nothing ? this.size : ABSURD_MISFIT * Math.max(this.size, 1);
    this.most = worthwhileMost(task, Math.sqrt(this.misfit));
    const root = this.root();
    this.order = branchingOrder(this.squares, task.grids, root.fit.x);
  }

  cutoff(): number {
    return this.misfit - SAME * (this.size + this.misfit);
  }

  private tighten(): void {
    this.most = worthwhileMost(this.task, Math.sqrt(this.misfit));
  }

  private columnsFrom(depth: number): number[] {
    return depth === 0 ? this.task.columns.map((_, j) => j) : this.order.slice(depth);
  }

  /** The node below `from` in which column `j` stands at `amount`, those of `free` still open. */
  private below(from: Node, free: readonly number[], j: number, amount: number): Node {
    const column = this.squares.columns[j] as Float64Array;
    const left = from.left.map((value, i) => value - amount * (column[i] as number));
    return this.relax(free, left, from.spent + amount * (this.slope[j] as number), from.side);
  }

  private relax(free: readonly number[], left: Float64Array, spent: number, from: Int8Array): Node {
    this.nodes += 1;
    const side = from.slice();
    for (const j of free) if (this.most[j] === 0) side[j] = -1;
    const fit = boxLeastSquares(this.squares, free, left, { most: this.most, slope: this.slope, side });
    return { fit, side, left, spent, value: fit.value + spent, bound: fit.bound + spent };
  }

  root(): Node {
    const start = new Int8Array(this.chosen.length);
    return this.relax(this.columnsFrom(0), this.squares.wanted, this.base, start);
  }

  /** Follows the nearest amount that can keep the limits at each turn, so that there is something to compare with. */
  dive(root: Node): void {
    let node = root;
    const taken: [number, number][] = [];
    for (let depth = 0; depth < this.order.length; depth++) {
      const j = this.order[depth] as number;
      const grid = this.task.grids[j] as Grid;
      const free = this.columnsFrom(depth + 1);
      const at = nearest(grid, node.fit.x[j] as number);
      const near = [at, at - 1, at + 1]
        .filter((index) => index >= 0 && index <= grid.last)
        .map((index) => grid.at(index));
      const amount = near.find((one) => this.limits.canKeep(j, one, { free, most: this.most }));
      if (amount === undefined) break;
      this.chosen[j] = amount;
      this.limits.take(j, amount);
      taken.push([j, amount]);
      node = this.below(node, free, j, amount);
    }
    for (const [j, amount] of taken) this.limits.take(j, -amount);
    if (taken.length === this.order.length) this.offer(node.left);
    this.tighten();
  }

  private offer(left: Float64Array): void {
    const misfit = left.reduce((sum, value) => sum + value * value, 0);
    if (misfit > this.misfit || (this.x !== null && misfit === this.misfit)) return;
    this.misfit = misfit;
    this.x = this.chosen.slice();
  }

  /**
   * The least misfit over the columns still free is a convex function of the amount of the next one. Going outward
   * from its least, the first amount on a side whose bound is too high rules out all beyond it.
   */
  branch(node: Node, depth: number): void {
    if (depth === this.order.length) {
      this.offer(node.left);
      return;
    }
    if (node.value >= this.cutoff()) {
      // Within rounding of what is found already.
      this.open = Math.min(this.open, node.bound);
      return;
    }
    const j = this.order[depth] as number;
    const grid = this.task.grids[j] as Grid;
    const last = Math.min(grid.below((this.most[j] as number) * (1 + 1e-12)), grid.last);
    const free = this.columnsFrom(depth + 1);
    const start = Math.min(grid.below(node.fit.x[j] as number), last);
    const look = (index: number): Node | null =>
      index < 0 || index > last ? null : this.below(node, free, j, grid.at(index));
    const sides = [
      { index: start, step: -1, next: look(start) },
      { index: start + 1, step: 1, next: look(start + 1) },
    ];
    for (;;) {
      let best = sides[0] as (typeof sides)[number];
      const other = sides[1] as (typeof sides)[number];
      const boundOf = (one: typeof best) => one.next?.bound ?? Number.POSITIVE_INFINITY;
      if (boundOf(other) < boundOf(best)) best = other;
      const { next } = best;
      if (next === null || next.bound >= this.cutoff()) return;
      if (this.nodes >= (this.task.mostNodes ?? MOST_NODES)) this.stopped = true;
      if (this.stopped) {
        this.open = Math.min(this.open, next.bound);
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
 * amounts keep them (or only such as miss tenfold); without limits there always are some. When the nodes run out, the
 * best found and a bound that is still proven come back, and `complete` is false.
 */
export function searchGrid(task: GridTask, multipliers: readonly number[] = []): GridFit | null {
  const search = new Search(task, multipliers);
  const root = search.root();
  search.dive(root);
  search.branch(search.root(), 0);
  const { x, misfit, stopped, nodes } = search;
  if (x === null) return null;
  const bound = Math.max(Math.min(search.cutoff(), search.open), 0);
  return { x, misfit, bound, complete: !stopped, nodes };
}
