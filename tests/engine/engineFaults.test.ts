import { expect, it } from "vitest";
import { faultOf, isThereAlready } from "../../src/engine/engineFaults.ts";

// The words of nats-server 2.9 and of its library, as they came in tests.
it("every refusal has its sentence; a time that ran out is none", () => {
  const told = (words: string) => faultOf(new Error(words)).code;
  expect(told("Authorization Violation")).toBe("deskRefused");
  expect(told("User Authentication Revoked")).toBe("deskRefused");
  expect(told("User Authentication Expired")).toBe("deskRefused");
  expect(told("Authentication Timeout")).toBe("deskUnreachable");
  expect(told("Authorization Timeout")).toBe("deskUnreachable");
  expect(told('Permissions Violation for Publish to "x"')).toBe("deskForbids");
  expect(told("maximum bytes exceeded")).toBe("deskFull");
  expect(told("Maximum Payload Violation")).toBe("tooLarge");
  expect(told("no responders")).toBe("deskBusy");
  expect(told("connection refused")).toBe("deskUnreachable");
  expect(isThereAlready(new Error("maximum messages per subject exceeded"))).toBe(true);
  expect(isThereAlready(new Error("maximum bytes exceeded"))).toBe(false);
});
