/** What the vehicle must be before it is measured; each has its picture. */
export const standingSteps = [
  {
    id: "tyres",
    words: "Tires at their driving pressure",
    hint: "Cold, as the vehicle is used. A soft tire changes every height.",
  },
  {
    id: "load",
    words: "Its usual load is in it",
    hint: "Fuel, tools, rack, bumper: what it always carries. Payload comes later.",
  },
  {
    id: "settled",
    words: "Rolled and bounced",
    hint: "Roll it a length forward and back. Lift each bumper about 1 1/2 in and let go, three times; push it down as often.",
  },
  {
    id: "wheels",
    words: "On its own wheels",
    hint: "No jack, no lift arms under the frame: the springs carry it.",
  },
] as const;
