import eslint from "@eslint/js";
import tseslint from "typescript-eslint";

export default tseslint.config(
  { ignores: ["dist/", "reports/", ".venv/", "my-yards/", "**/node_modules/", "tests/fixtures/", "notebooks/", "data-demo/"] },
  eslint.configs.recommended,
  tseslint.configs.strictTypeChecked,
  tseslint.configs.stylisticTypeChecked,
  {
    languageOptions: { parserOptions: { projectService: { allowDefaultProject: [".config/*.js"] } } },
    rules: {
      "max-lines": ["error", { max: 400, skipBlankLines: true, skipComments: true }],
      "no-console": "error",
      eqeqeq: "error",
      "@typescript-eslint/restrict-template-expressions": ["error", { allowNumber: true }],
      "@typescript-eslint/switch-exhaustiveness-check": "error",
      "@typescript-eslint/no-unused-vars": ["error", { argsIgnorePattern: "^_" }],
    },
  },
  {
    // Index loops over arrays whose lengths were checked on entry.
    files: ["src/estimate/**", "src/simulate/**", "src/derive/**", "tests/**"],
    rules: { "@typescript-eslint/no-non-null-assertion": "off" },
  },
  {
    // The command line prints; so do the benchmark's lines.
    files: ["src/cli.ts", "src/run/**", "tests/bench/**", "tests/fail-on-console.ts"],
    rules: { "no-console": "off" },
  },
  {
    // Written by a command, only re-exports.
    files: ["src/index.ts"],
    rules: { "max-lines": "off" },
  },
  { files: [".config/*.js"], extends: [tseslint.configs.disableTypeChecked] },
);
