/*
 * Who may import whom. Rooms are named from the ground up: each may import those before it, and none
 * after it. No files import each other in a circle, so no two rooms do either.
 */

const rooms = [
  "words",
  "physics",
  "sensors",
  "records",
  "saying",
  "sharing",
  "storage",
  "engine",
  "compute",
  "command-line",
  "server",
  "screens",
];

/** Beside others, though they stand before them. */
const apart = {
  // They name messages by their codes; who shows them says them.
  sharing: ["saying"],
  storage: ["sharing", "saying"],
  engine: ["sharing", "saying"],
  compute: ["engine", "saying"],
  "command-line": ["storage", "engine", "compute"],
  server: ["storage", "sharing", "compute", "command-line"],
};

/** The rooms of screens that others use, likewise from the ground up. A row's rooms do not import each other. */
const screenRooms = [
  ["shapes"],
  ["layouts"],
  ["readings", "voice"],
  ["drawings"],
  ["parts"],
  ["camera", "charts", "howComputed", "offline", "settings"],
  ["assessment", "choosing", "guide"],
  ["job", "saved", "remeasure", "triedStops"],
  ["check"],
  [
    "exchange",
    "explaining",
    "fitted",
    "fullTravel",
    "labels",
    "pack",
    "secondPerson",
    "travelView",
  ],
  ["answer"],
  ["openCheck", "quickCheck", "ranking"],
  ["desk"],
  ["home"],
];

const screens = (room) => `^src/screens/${room}/`;

const upward = rooms.flatMap((room, place) => {
  const barred = [...rooms.slice(place + 1), ...(apart[room] ?? [])];
  return barred.length === 0
    ? []
    : [
        {
          name: `${room} imports only from below`,
          severity: "error",
          from: { path: `^src/${room}/` },
          to: { path: `^src/(${barred.join("|")})/` },
        },
      ];
});

const upwardInScreens = screenRooms.flatMap((row, place) =>
  row.map((room) => ({
    name: `screens/${room} imports only from below`,
    severity: "error",
    from: { path: screens(room) },
    to: {
      path: screens(
        `(${[...row.filter((other) => other !== room), ...screenRooms.slice(place + 1).flat()].join("|")})`,
      ),
    },
  })),
);

/** The rooms of screens that have their place; any other is a screen of its own, above them all. */
const placed = screens(`(${screenRooms.flat().join("|")}|styles)`);

export default {
  forbidden: [
    {
      name: "no circles",
      severity: "error",
      from: {},
      to: { circular: true },
    },
    ...upward,
    ...upwardInScreens,
    {
      name: "a screen without a place in the order is imported by no other room",
      comment:
        "A room that others use is put into screenRooms, on the row above all that it imports.",
      severity: "error",
      from: { path: "^src/screens/([^/]+)/" },
      to: { path: "^src/screens/[^/]+/", pathNot: [placed, "^src/screens/$1/"] },
    },
    {
      name: "physics is entered by its doors",
      comment:
        "Its own files, and each room's index.ts. One door for all would have every test and command read the whole calculation.",
      severity: "error",
      from: { path: "^src/(?!physics/)" },
      to: { path: "^src/physics/[^/]+/", pathNot: "^src/physics/[^/]+/index\\.ts$" },
    },
    {
      name: "physics' rooms do not use their own doors",
      comment: "They import each other file by file, so that no door closes a circle.",
      severity: "error",
      from: { path: "^src/physics/[^/]+/" },
      to: { path: "^src/physics/[^/]+/index\\.ts$" },
    },
    {
      name: "physics needs no package",
      severity: "error",
      from: { path: "^src/physics/" },
      to: { dependencyTypes: ["npm", "npm-dev", "core"] },
    },
    {
      name: "what ships needs no development package",
      severity: "error",
      from: { path: "^src/", pathNot: "^src/tooling/" },
      to: { dependencyTypes: ["npm-dev"] },
    },
    {
      name: "no test in what ships",
      severity: "error",
      from: { path: "^src/" },
      to: { path: "^tests/" },
    },
    {
      name: "every import is found",
      severity: "error",
      from: {},
      to: { couldNotResolve: true },
    },
  ],
  options: {
    babelConfig: { fileName: "src/tooling/rooms/babel.mjs" },
    doNotFollow: { path: "node_modules" },
    enhancedResolveOptions: { exportsFields: ["exports"], conditionNames: ["import", "default"] },
    exclude: { path: "\\.(css|json|md)" },
  },
};
