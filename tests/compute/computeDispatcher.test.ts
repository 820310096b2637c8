import { describe, expect, it } from "vitest";
import { ComputeDispatcher, sliceMs } from "../../src/compute/computeDispatcher.ts";
import type { Reply, Request } from "../../src/compute/messages.ts";
import { assessFitment } from "../../src/physics/assess.ts";
import type { DesignEvent } from "../../src/physics/fitment.ts";
import { simulateImpact } from "../../src/physics/impact/impact.ts";
import { settled } from "../../src/physics/impact/impactSetup.ts";
import { spacersByMm } from "../../src/physics/prescription/candidates.ts";
import { prescribeSteps } from "../../src/physics/prescription/prescribe.ts";
import { cornerDynamics } from "../../src/physics/stiffness/cornerDynamics.ts";
import { secantRate } from "../../src/physics/stop/stiffnessClass.ts";
import { demoFitment, loadedSetup, unwrapped } from "../physics/demoFitments.ts";
import { finished } from "../physics/prescription/exhaustive.ts";
import { SlowDispatcher } from "./slowDispatcher.ts";

const arm = demoFitment("arm-fits");
const strut = demoFitment("strut-too-stiff");
const samples = 10_000;
const landing: DesignEvent = { kind: "landing", heightM: 0.1 };

function assess(ticket: number, lane = "answer", fitment: typeof arm = arm): Request {
  return { kind: "assess", ticket, lane, fitment, samples };
}

function map(ticket: number, lane = "map"): Request {
  return { kind: "map", ticket, lane, fitment: arm, side: "left", heights: [-5, 0, 5] };
}

function kinds(replies: readonly Reply[]): string[] {
  return replies.map(({ kind }) => kind);
}

describe("the desk", () => {
  it("gives the static answer first, then the whole one, the same as in one go", () => {
    const desk = new SlowDispatcher();
    desk.receive(assess(1));
    desk.turn();
    expect(kinds(desk.replies)).toEqual(["static"]);
    desk.finish();
    const [first, second] = desk.replies;
    expect(kinds(desk.replies)).toEqual(["static", "complete"]);
    expect([first?.last, second?.last]).toEqual([false, true]);
    if (second?.kind !== "complete") throw new Error("no whole answer");
    expect(second.assessment).toEqual(unwrapped(assessFitment(arm, { samples })));
    expect(second.corners).toEqual(arm.corners.map((corner) => cornerDynamics(arm, corner)));
  });

  it("drops an older request of the same lane as soon as a newer one comes", () => {
    const desk = new SlowDispatcher();
    desk.receive(assess(1));
    desk.turn();
    desk.turn();
    desk.receive(assess(2, "answer", strut));
    desk.finish();
    expect(kinds(desk.of(1))).toEqual(["static"]);
    expect(kinds(desk.of(2))).toEqual(["static", "complete"]);
  });

  it("serves lanes one after the other, all of them", () => {
    const desk = new SlowDispatcher();
    desk.receive(assess(1, "fitted"));
    desk.receive(assess(2, "proposed", strut));
    desk.finish();
    expect(kinds(desk.of(1))).toEqual(["static", "complete"]);
    expect(kinds(desk.of(2))).toEqual(["static", "complete"]);
  });

  it("answers before it goes on with a map", () => {
    const desk = new SlowDispatcher();
    desk.receive(map(1));
    desk.turn();
    desk.receive(assess(2));
    desk.finish();
    const order = desk.replies.map(({ ticket, last }) => `${ticket}${last ? " last" : ""}`);
    expect(order.indexOf("2 last")).toBeLessThan(order.indexOf("1 last"));
    expect(desk.of(1).at(-1)?.last).toBe(true);
  });

  it("says what to do before it goes on with a map, by what it knows of the vehicle", () => {
    const desk = new SlowDispatcher();
    const options = { spacersMm: spacersByMm };
    const ask = (ticket: number): Request => ({
      kind: "prescribe",
      ticket,
      lane: "prescribe",
      fitment: strut,
      candidates: [],
      options,
    });
    desk.receive({ kind: "assess", ticket: 1, lane: "answer", fitment: strut });
    desk.finish();
    desk.receive(map(2));
    desk.turn();
    desk.receive(ask(3));
    desk.receive(ask(4));
    desk.finish();
    const order = desk.replies.map(({ ticket, last }) => `${ticket}${last ? " last" : ""}`);
    expect(order.indexOf("4 last")).toBeLessThan(order.indexOf("2 last"));
    expect(desk.of(3)).toEqual([]);
    const last = desk.of(4).at(-1);
    if (last?.kind !== "prescribed") throw new Error("nothing was prescribed");
    expect(last.prescription).toEqual(finished(prescribeSteps(strut, [], options)));
  });

  it("streams a map: its layout, then cells slice by slice, each once", () => {
    const desk = new SlowDispatcher();
    desk.receive(map(1));
    desk.finish();
    const [layout, ...rest] = desk.replies;
    if (layout?.kind !== "mapLayout") throw new Error("no layout");
    expect(layout.layout.heights).toEqual([-5, 0, 5]);
    expect(rest.length).toBeGreaterThan(3);
    const cells = rest.flatMap((reply) => (reply.kind === "cells" ? reply.cells : []));
    expect(cells).toHaveLength(layout.layout.heights.length * layout.layout.classes.length);
    expect(rest.map(({ last }) => last)).toEqual(rest.map((_, at) => at === rest.length - 1));
  });

  it("keeps its slices: it looks at the clock after every event", () => {
    let clock = 0;
    let longest = 0;
    const turns: (() => void)[] = [];
    const desk = new ComputeDispatcher({
      reply: () => {},
      later: (work) => turns.push(work),
      now: () => clock++,
    });
    desk.receive(map(1));
    for (let work = turns.shift(); work !== undefined; work = turns.shift()) {
      const from = clock;
      work();
      longest = Math.max(longest, clock - from);
    }
    expect(longest).toBeLessThanOrEqual(2 * sliceMs + 2);
  });

  it("stops a cancelled request", () => {
    const desk = new SlowDispatcher();
    desk.receive(map(1));
    desk.turn();
    desk.receive({ kind: "cancel", ticket: 1 });
    const before = desk.replies.length;
    desk.finish();
    expect(desk.replies).toHaveLength(before);
  });

  it("runs a single event at once, with the stop as it is or changed, and its trace", () => {
    const desk = new SlowDispatcher();
    desk.receive(map(1));
    const ask = (ticket: number, change: object) =>
      desk.receive({
        kind: "run",
        ticket,
        fitment: arm,
        side: "left",
        event: landing,
        change,
        traceStepS: 0.001,
      });
    ask(2, {});
    ask(3, { extraHeightMm: 8, stiffnessClass: 400 });
    expect(kinds(desk.replies)).toEqual(["run", "run"]);
    const [corner] = arm.corners;
    if (corner === undefined) throw new Error("no corner");
    const setup = loadedSetup(arm, corner);
    const changed = unwrapped(
      settled(setup, { extraHeightMm: 8, stopScale: 400 / secantRate(setup.stop) }),
    );
    const results = desk.replies.map((reply) => reply.kind === "run" && reply.run);
    expect(results[0]).toMatchObject({
      result: unwrapped(simulateImpact(setup, landing)).result,
    });
    expect(results[1]).toMatchObject({
      result: unwrapped(simulateImpact(changed, landing)).result,
    });
    expect(results.every((run) => run && (run.trace?.timeS.length ?? 0) > 500)).toBe(true);
  });

  it("answers with a fault, never with silence", () => {
    const desk = new SlowDispatcher();
    const [left] = strut.corners;
    if (left === undefined) throw new Error("no corner");
    const fitment = { ...strut, corners: [left] };
    const run = { kind: "run", fitment, event: landing, change: {}, traceStepS: 0.001 } as const;
    desk.receive({ ...run, ticket: 1, side: "right" });
    desk.receive({ ...run, ticket: 2, side: "left", fitment: { ...fitment, ride: {} } });
    desk.receive({ kind: "map", ticket: 3, lane: "m", fitment, side: "right", heights: null });
    desk.receive({ ...assess(4, "a"), fitment: { ...arm, corners: [] } } as Request);
    desk.receive({ ...assess(5, "b"), fitment: { ...arm, corners: null } } as unknown as Request);
    desk.finish();
    const codes = [1, 2, 3, 4, 5].map((ticket) => {
      const [reply] = desk.of(ticket);
      return reply?.kind === "fault" && reply.last ? reply.fault.code : null;
    });
    expect(codes.slice(0, 3)).toEqual(["cornerNotMeasured", "rideUnknown", "cornerNotMeasured"]);
    expect(codes[3]).not.toBeNull();
    expect(codes[4]).not.toBeNull();
  });

  it("goes on with others after a request that throws", () => {
    const desk = new SlowDispatcher();
    const broken = { ...assess(1, "a"), fitment: null } as unknown as Request;
    desk.receive(broken);
    desk.receive(assess(2, "b"));
    desk.finish();
    expect(desk.of(1)).toMatchObject([{ kind: "fault", fault: { code: "computationFailed" } }]);
    expect(kinds(desk.of(2))).toEqual(["static", "complete"]);
  });
});

describe("a ranking", () => {
  const candidates = [{ id: "strut", stop: strut.stop }];

  const options = { samples, spacersMm: [10, 20] };

  function rank(ticket: number): Request {
    return { kind: "rank", ticket, lane: "rank", fitment: arm, candidates, options };
  }

  it("tells each stop as it comes, and all in order at the end", () => {
    const desk = new SlowDispatcher();
    desk.receive(rank(1));
    desk.finish();
    const told = desk.of(1).flatMap((reply) => (reply.kind === "ranking" ? [reply.progress] : []));
    expect(told.at(-1)).toMatchObject({ done: 2, total: 2 });
    const last = desk.of(1).at(-1);
    if (last?.kind !== "ranked") throw new Error("no ranking");
    expect(last.last).toBe(true);
    expect(new Set(last.ranked.map(({ id }) => id))).toEqual(new Set(["fitted", "strut"]));
    expect(told.flatMap(({ ranked }) => ranked).length).toBe(last.ranked.length);
  });

  it("waits for answers, and stops where it is cancelled or overtaken", () => {
    const desk = new SlowDispatcher();
    desk.receive(rank(1));
    desk.turn();
    desk.receive(assess(2));
    desk.receive(rank(3));
    desk.turn();
    desk.receive({ kind: "cancel", ticket: 3 });
    desk.finish();
    expect(kinds(desk.of(2))).toEqual(["static", "complete"]);
    expect(kinds([...desk.of(1), ...desk.of(3)])).not.toContain("ranked");
  });
});
