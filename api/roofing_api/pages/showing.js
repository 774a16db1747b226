// Showing a plan: its drawing, order list, findings and cautions as elements. Texts go in as text
// and drawings element by element, so that nothing which came in an answer is run.

import { written } from "./measures.js";

const SVG = "http://www.w3.org/2000/svg";
const DRAWN = new Set(["svg", "g", "path", "text", "tspan", "title", "desc"]);
const STYLED = new Set([
  "viewBox", "role", "d", "x", "y", "fill", "stroke", "stroke-width", "stroke-dasharray",
  "font-family", "font-size", "font-weight", "text-anchor", "transform",
]);

export const SEVERITIES = {
  stops_the_job: "Stops the job",
  breaks_code: "Breaks code",
  against_practice: "Against practice",
  worth_knowing: "Worth knowing",
};

const FORMS = {
  single_slope: "Single-slope roof",
  footprint: "Roof over an outline",
  planes: "Roof measured plane by plane",
};

export const DEFERS =
  "Local code, the instructions printed on the materials, and the advice of those licensed to give it go before every number here.";

/** Make an element with attributes and children; a text child is a text. */
export function made(name, attributes = {}, ...children) {
  const element = document.createElement(name);
  for (const [attribute, value] of Object.entries(attributes)) {
    if (value !== undefined && value !== false) element.setAttribute(attribute, value === true ? "" : value);
  }
  element.append(...children.filter((child) => child !== undefined && child !== null));
  return element;
}

/** Say what a plan is of, in a line. */
export function heading(plan) {
  const { roof, units } = plan;
  const length = (value) => written({ value, unit: units.length });
  const pitches = [...new Set([roof.lowest_pitch, roof.steepest_pitch])];
  const pitch = pitches.map((value) => written({ value, unit: units.pitch })).join(" to ");
  const squares = written({ value: roof.squares, unit: "square" });
  const form = FORMS[roof.form] || `${roof.form[0].toUpperCase()}${roof.form.slice(1)} roof`;
  const size =
    roof.form === "single_slope"
      ? `${length(roof.eave_length)} by ${length(roof.slope_length)}`
      : `${plan.planes.length} planes`;
  return `${form}: ${size}, pitch ${pitch}, ${squares}`;
}

/** Make the order list: every line that comes to a pack or more. */
export function orderTable(plan) {
  const lines = Object.values(plan.order).filter((line) => line.packs);
  return table(
    "Order list",
    ["item", "buy", "each holds", "needed", "left over", "would cover"],
    lines.map((line) => [
      line.item,
      made("span", {}, made("strong", {}, `${line.packs}`), ` ${packs(line)}`),
      written(line.pack_holds),
      written(line.needed),
      written(line.left_over),
      written({ value: line.covers_more, unit: plan.units.area }),
    ]),
  );
}

/** Make a table whose rows begin with what they are about. A narrow page sets the cells below each
 * other, with their headings before them: the roles keep it a table to a screen reader even so. */
export function table(caption, heads, rows) {
  const columns = heads.map((head) => made("th", { scope: "col", role: "columnheader" }, head));
  const body = rows.map(([first, ...others]) =>
    made(
      "tr",
      { role: "row" },
      made("th", { scope: "row", role: "rowheader" }, first),
      ...others.map((cell, n) => made("td", { role: "cell", "data-head": heads[n + 1] }, cell)),
    ),
  );
  return made(
    "table",
    { role: "table", part: "order" },
    made("caption", {}, caption),
    made("thead", { role: "rowgroup" }, made("tr", { role: "row" }, ...columns)),
    made("tbody", { role: "rowgroup" }, ...body),
  );
}

function packs({ packs: number, pack }) {
  if (number === 1) return pack;
  return pack.endsWith("x") ? `${pack}es` : `${pack}s`;
}

/** Make the list of findings; `more` gives what else stands at each, if anything. */
export function findingList(plan, more = () => null) {
  if (!plan.findings.length) return made("p", {}, "No finding.");
  return made(
    "ul",
    { class: "findings", part: "findings" },
    ...plan.findings.map((finding) =>
      made(
        "li",
        { class: finding.severity },
        made("strong", {}, `${SEVERITIES[finding.severity] || finding.severity}`),
        ` (${finding.place}): ${finding.says} `,
        made("span", { class: "cure" }, `${finding.cure} `),
        made("cite", {}, `Source: ${finding.source}.`),
        more(finding),
      ),
    ),
  );
}

/** Make the list of cautions. */
export function cautionList(plan) {
  return made(
    "ul",
    { class: "cautions" },
    ...plan.cautions.map((caution) =>
      made(
        "li",
        {},
        made("strong", {}, `${caution.about[0].toUpperCase()}${caution.about.slice(1)}. `),
        `${caution.says} `,
        made("cite", {}, `Source: ${caution.source}.`),
      ),
    ),
  );
}

/** Take a drawing out of its text: lines and words only, and as wide as there is room. */
export function drawing(text) {
  const parsed = new DOMParser().parseFromString(text, "image/svg+xml").documentElement;
  return copied(parsed);
}

function copied(element) {
  if (element.namespaceURI !== SVG || !DRAWN.has(element.localName)) return "";
  const copy = document.createElementNS(SVG, element.localName);
  for (const { name, value } of element.attributes) {
    if (STYLED.has(name)) copy.setAttribute(name, value);
  }
  for (const child of element.childNodes) {
    if (child.nodeType === Node.ELEMENT_NODE) copy.append(copied(child));
    else if (child.nodeType === Node.TEXT_NODE) copy.append(child.data);
  }
  return copy;
}

/** Say in a sentence what a plan comes to, for a screen reader and for a status line. */
export function summary(plan) {
  const items = Object.values(plan.order).filter((line) => line.packs).length;
  const found = plan.findings.length;
  const grave = plan.findings.filter(({ severity }) => severity !== "worth_knowing").length;
  const findings = found
    ? `${found} finding${found === 1 ? "" : "s"}, ${grave ? `${grave} graver than` : "only"} worth knowing`
    : "no finding";
  return `Planned: ${items} items to buy, ${findings}.`;
}
