/** Types tie rooms as values do, so an import of a type stays an import when the types are taken out. */
function typeImportsStay() {
  return {
    visitor: {
      Program(program) {
        for (const statement of program.node.body) {
          if (statement.type === "ImportDeclaration") {
            statement.importKind = "value";
            for (const specifier of statement.specifiers) specifier.importKind = "value";
          }
          if (statement.type === "ExportNamedDeclaration" && statement.source) {
            statement.exportKind = "value";
            for (const specifier of statement.specifiers) specifier.exportKind = "value";
          }
        }
      },
    },
  };
}

export default {
  presets: [["@babel/preset-typescript", { onlyRemoveTypeImports: true }]],
  plugins: [typeImportsStay, ["@babel/plugin-transform-react-jsx", { runtime: "classic" }]],
};
