export default {
  forbidden: [{ name: "no-circles", severity: "error", from: {}, to: { circular: true } }],
  options: {
    babelConfig: { fileName: "src/tooling/rooms/babel.mjs" },
    doNotFollow: { path: "node_modules" },
    exclude: { path: "\\.css$" },
  },
};
