import { assessStatic, completeAssessment } from "../physics/assess.ts";
import type { Corner, Fitment, Side } from "../physics/fitment.ts";
import { type ImpactRun, impactSetupOf, settled, simulateImpact } from "../physics/impact/index.ts";
import type { Fault, Outcome } from "../physics/outcome.ts";
import { prescribeSteps, type SearchOptions } from "../physics/prescription/index.ts";
import { rankStops } from "../physics/ranking/index.ts";
import { planRemeasureSteps } from "../physics/remeasure/index.ts";
import {
  type CornerDynamics,
  cornerDynamicsSteps,
  heightClassMap,
  type MapCell,
} from "../physics/stiffness/index.ts";
import { secantRate } from "../physics/stop/index.ts";
import * as messages from "../words/compiled/compute.ts";
import { LastAnswers } from "./lastAnswers.ts";
import type { Reply, Request } from "./messages.ts";

type Of<Kind extends Request["kind"]> = Extract<Request, { kind: Kind }>;

/** What the desk needs of the place it works in. */
export interface DeskSurroundings {
  reply(reply: Reply): void;
  /** Calls back once waiting messages have had their turn. */
  later(work: () => void): void;
  /** Milliseconds. */
  now(): number;
}

/** How long the desk works before it looks for messages again, ms. */
export const sliceMs = 8;

/** A long work tells at least this often that it goes on, ms. */
const tellMs = 250;

interface Job {
  readonly ticket: number;
  readonly lane: string;
  readonly work: Generator<void, void, void>;
}

/**
 * Does what it is asked in slices, so that a newer request of the same lane, or a cancellation, stops
 * an older one within a slice. Answers before what to do, and that before maps and rankings; within a kind, first come first served. A single
 * event is short enough to be run at once.
 */
export class ComputeDispatcher {
  readonly #surroundings: DeskSurroundings;
  #answers: Job[] = [];
  /** What to do, before the drawings below it. */
  #advice: Job[] = [];
  #maps: Job[] = [];
  /** So that what to do need not assess anew what stands there. */
  readonly #lastAnswers = new LastAnswers();
  #waiting = false;

  constructor(surroundings: DeskSurroundings) {
    this.#surroundings = surroundings;
  }

  receive(request: Request): void {
    switch (request.kind) {
      case "assess":
        this.#answers = this.#answers.filter((job) => job.lane !== request.lane);
        this.#answers.push({ ...request, work: this.#assess(request) });
        break;
      case "map":
        this.#maps = this.#maps.filter((job) => job.lane !== request.lane);
        this.#maps.push({ ...request, work: this.#map(request) });
        break;
      case "rank": {
        const lane = `rank ${request.lane}`;
        this.#maps = this.#maps.filter((job) => job.lane !== lane);
        this.#maps.push({ ticket: request.ticket, lane, work: this.#rank(request) });
        break;
      }
      case "prescribe": {
        const { ticket, lane } = request;
        this.#advice = this.#advice.filter((job) => job.lane !== lane);
        this.#advice.push({ ticket, lane, work: this.#prescribe(request) });
        break;
      }
      case "remeasure": {
        const lane = `remeasure ${request.lane}`;
        this.#maps = this.#maps.filter((job) => job.lane !== lane);
        this.#maps.push({ ticket: request.ticket, lane, work: this.#again(request) });
        break;
      }
      case "run":
        this.#guarded(request.ticket, () => this.#run(request));
        break;
      case "cancel":
        this.#answers = this.#answers.filter((job) => job.ticket !== request.ticket);
        this.#advice = this.#advice.filter((job) => job.ticket !== request.ticket);
        this.#maps = this.#maps.filter((job) => job.ticket !== request.ticket);
        break;
    }
    this.#wait();
  }

  #wait(): void {
    if (this.#waiting || this.#queue().length === 0) return;
    this.#waiting = true;
    this.#surroundings.later(() => {
      this.#waiting = false;
      this.#slice();
      this.#wait();
    });
  }

  #queue(): Job[] {
    return [this.#answers, this.#advice].find((jobs) => jobs.length > 0) ?? this.#maps;
  }

  #slice(): void {
    const end = this.#surroundings.now() + sliceMs;
    do {
      const queue = this.#queue();
      const job = queue[0];
      if (job === undefined) return;
      const ended = this.#guarded(job.ticket, () => job.work.next().done === true) ?? true;
      if (ended) queue.splice(queue.indexOf(job), 1);
    } while (this.#surroundings.now() < end);
  }

  /** What a piece of work gives; undefined, and a fault sent, where it throws. */
  #guarded<Result>(ticket: number, work: () => Result): Result | undefined {
    try {
      return work();
    } catch {
      this.#fault(ticket, computationFailed);
      return undefined;
    }
  }

  #fault(ticket: number, fault: Fault): void {
    this.#surroundings.reply({ kind: "fault", ticket, last: true, fault });
  }

  *#assess(request: Of<"assess">): Generator<void, void, void> {
    const { ticket, fitment, samples, seed, wholeOnly = false } = request;
    const assessed = assessStatic(fitment, {
      ...(samples === undefined ? {} : { samples }),
      ...(seed === undefined ? {} : { seed }),
    });
    if (!assessed.ok) return this.#fault(ticket, assessed.fault);
    if (!wholeOnly) {
      this.#surroundings.reply({
        kind: "static",
        ticket,
        last: false,
        assessment: assessed.value,
      });
    }
    yield;
    const corners: CornerDynamics[] = [];
    for (const corner of fitment.corners) {
      corners.push(yield* cornerDynamicsSteps(fitment, corner));
      yield;
    }
    const assessment = completeAssessment(fitment, assessed.value, corners);
    if (samples === undefined && seed === undefined) {
      this.#lastAnswers.keep(fitment, { assessment, dynamics: corners });
    }
    this.#surroundings.reply({ kind: "complete", ticket, last: true, assessment, corners });
  }

  *#map(request: Of<"map">): Generator<void, void, void> {
    const { ticket, fitment, side, heights } = request;
    const corner = cornerOn(fitment, side);
    if (corner === undefined) return this.#fault(ticket, noCorner(side));
    const map = heightClassMap(fitment, corner, heights);
    if (!map.ok) return this.#fault(ticket, map.fault);
    const { secantRateNPerMm, classes } = map.value;
    this.#surroundings.reply({
      kind: "mapLayout",
      ticket,
      last: false,
      layout: { secantRateNPerMm, classes, heights: map.value.heights },
    });
    let cells: MapCell[] = [];
    let sentAt = this.#surroundings.now();
    for (const cell of map.value.cells()) {
      if (cell !== null) cells.push(cell);
      if (cells.length > 0 && this.#surroundings.now() - sentAt >= sliceMs) {
        this.#surroundings.reply({ kind: "cells", ticket, last: false, cells });
        cells = [];
        sentAt = this.#surroundings.now();
      }
      yield;
    }
    this.#surroundings.reply({ kind: "cells", ticket, last: true, cells });
  }

  *#rank(request: Of<"rank">): Generator<void, void, void> {
    const { ticket, fitment, candidates, options } = request;
    const steps = rankStops(fitment, candidates, this.#withAnswer(fitment, options));
    let toldAt = Number.NEGATIVE_INFINITY;
    for (let step = steps.next(); ; step = steps.next()) {
      if (step.done) {
        this.#surroundings.reply({ kind: "ranked", ticket, last: true, ranked: step.value });
        return;
      }
      const progress = step.value;
      const now = this.#surroundings.now();
      if (progress.ranked.length > 0 || now - toldAt >= tellMs) {
        this.#surroundings.reply({ kind: "ranking", ticket, last: false, progress });
        toldAt = now;
      }
      yield;
    }
  }

  *#prescribe(request: Of<"prescribe">): Generator<void, void, void> {
    const { ticket, fitment, candidates, options } = request;
    const steps = prescribeSteps(fitment, candidates, this.#withAnswer(fitment, options));
    let toldAt = this.#surroundings.now();
    for (let step = steps.next(); ; step = steps.next()) {
      if (step.done) {
        const prescription = step.value;
        this.#surroundings.reply({ kind: "prescribed", ticket, last: true, prescription });
        return;
      }
      const now = this.#surroundings.now();
      if (step.value.soFar !== undefined || now - toldAt >= tellMs) {
        this.#surroundings.reply({
          kind: "prescribing",
          ticket,
          last: false,
          progress: step.value,
        });
        toldAt = now;
      }
      yield;
    }
  }

  #withAnswer(fitment: Fitment, options: SearchOptions): SearchOptions {
    if (options.samples !== undefined || options.seed !== undefined) return options;
    const known = this.#lastAnswers.at(fitment);
    return known === null ? options : { ...options, assessed: known.assessment };
  }

  *#again(request: Of<"remeasure">): Generator<void, void, void> {
    const { ticket, fitment, assessment, tools, passed } = request;
    const plan = yield* planRemeasureSteps(fitment, assessment, tools, passed);
    this.#surroundings.reply({ kind: "remeasurePlan", ticket, last: true, plan });
  }

  #run(request: Of<"run">): void {
    const { ticket } = request;
    const run = runEvent(request);
    if (run.ok) this.#surroundings.reply({ kind: "run", ticket, last: true, run: run.value });
    else this.#fault(ticket, run.fault);
  }
}

function runEvent(request: Of<"run">): Outcome<ImpactRun> {
  const { fitment, side, event, change, traceStepS } = request;
  const corner = cornerOn(fitment, side);
  if (corner === undefined) return { ok: false, fault: noCorner(side) };
  const asItIs = impactSetupOf(fitment, corner, { loaded: true });
  if (!asItIs.ok) return asItIs;
  const { extraHeightMm = 0, stiffnessClass } = change;
  const stopScale =
    stiffnessClass === undefined ? 1 : stiffnessClass / secantRate(asItIs.value.stop);
  const changed = settled(asItIs.value, { extraHeightMm, stopScale });
  return changed.ok ? simulateImpact(changed.value, event, { traceStepS }) : changed;
}

function cornerOn(fitment: Fitment, side: Side): Corner | undefined {
  return fitment.corners.find((corner) => corner.side === side);
}

function noCorner(side: Side): Fault {
  return { code: "cornerNotMeasured", sentence: [messages.cornerHasNotBeen({ side })] };
}

const computationFailed: Fault = {
  code: "computationFailed",
  sentence: [messages.calculationStoppedOnThese],
};
