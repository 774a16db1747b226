// Two sheds at three pitches, and a mistake: what the service answers, with every name checked by
// the compiler against the service's OpenAPI document.
//
//     node build/order.js http://127.0.0.1:8000

import createClient from "openapi-fetch";
import type { components, paths } from "./api.js";

type Job = components["schemas"]["JobBodyInput"];
type OrderLine = components["schemas"]["OrderLine"];

// A plan also comes as text, drawings and sheets; this program reads JSON alone.
type Read = "application/json" | "application/problem+json";

const base = process.argv[2] ?? "http://127.0.0.1:8000";
const service = createClient<paths, Read>({ baseUrl: base });

function wordsFor(line: OrderLine): string {
  const { value, unit } = line.left_over;
  const left = unit === "count" ? `${value}` : `${value.toFixed(1)} ${unit}`;
  return `${line.packs} x ${line.pack} of ${line.item}, ${left} left over`;
}

async function orderOf(job: Job): Promise<string[]> {
  const { data, error } = await service.POST("/v1/plans", { body: job });
  if (error) {
    return error.errors.map((one) => `refused: ${one.detail}`);
  }
  return Object.values(data.order)
    .filter((line) => line.packs > 0)
    .map(wordsFor);
}

const toolStore: Job = {
  roof: { form: "single_slope", eave_length: "13 ft 6 in", run: "9 ft 4 in", pitch: "3:12" },
  shingle: { material: "metric_strip", per_bundle: 22 },
};
const withoutUnit: Job = {
  roof: { form: "gable", length: 16, width: "12 ft", pitch: "6:12" },
};

console.log("# The tool store");
console.log((await orderOf(toolStore)).join("\n"));

console.log("# A gable roof whose length has no unit");
console.log((await orderOf(withoutUnit)).join("\n"));

console.log("# The same gable at three pitches");
for (const pitch of ["4:12", "8:12", "12:12"]) {
  const { data } = await service.GET("/v1/plans", {
    params: { query: { form: "gable", length: "16 ft", width: "12 ft", pitch } },
  });
  if (data) {
    console.log(`${pitch}: ${data.squares.toFixed(2)} squares, ${data.order.shingles.packs} bundles`);
  }
}
