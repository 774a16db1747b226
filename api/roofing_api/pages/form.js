// The web form: what is written in it is asked as it changes, and stands in the page's address.

import { address, ask, Latest, Refusal, settled } from "./asking.js";
import {
  cautionList, DEFERS, drawing, findingList, heading, made, orderTable, summary,
} from "./showing.js";

const byId = (id) => document.getElementById(id);
const form = byId("asked");
const others = byId("others");
const plans = new Latest();
const pictures = new Latest();

/** Names that say how to answer: the page sees to these itself. */
const OURS = new Set(["format", "drawing", "page", "pointer", "value", "table"]);

/** What the forms of an answer that the service offers are good for, the most wanted first. */
const SHEETS = {
  pdf: "Job sheet (PDF)",
  html: "Job sheet (page)",
  xlsx: "Workbook (XLSX)",
  csv: "Order list (CSV)",
  text: "Plain text",
  svg: "Drawing (SVG)",
  json: "All numbers (JSON)",
};
const OFFERED = byId("sheets").dataset.offered.split(" ");
const KEPT = [...Object.keys(SHEETS).filter((word) => OFFERED.includes(word)), ...OFFERED.filter((word) => !SHEETS[word])];

/** What can be drawn: its word, what it shows, and whether a plan has any of it. */
const DRAWINGS = [
  ["roof_plan", "Roof from above", (plan) => plan.planes.length > 1],
  ["plane", "Courses and pieces", () => true],
  ["underlayment", "Underlayment", () => true],
  ["rolls", "Cuts of the rolls", () => true],
  ["metal", "Metal", () => true],
  ["metal_cuts", "Cuts of the metal", () => true],
  ["shingle_cuts", "Cuts of the shingles", () => true],
  ["offcuts", "Offcuts used again", (plan) => plan.choices.cutting.reuse === "best"],
  ["nailing", "Nails", () => true],
  ["caps", "Caps", (plan) => plan.caps.length > 0],
  ["flashings", "Flashings", (plan) => plan.openings.length + plan.step_flashings.length > 0],
  ["sections", "Sections", () => true],
  ["story_pole", "Story pole", () => true],
];

/** Fields whose faults are told: those that were left, and all once the form was sent. */
const left = new Set();
let planned = null;
let page = 1;

function field(name) {
  const found = form.elements.namedItem(name);
  return found instanceof RadioNodeList ? found[0] : found;
}

/** Show the fields of the form of roof that is chosen; those of others are not sent. */
function showFields() {
  const chosen = form.elements.form.value;
  for (const one of form.querySelectorAll(".field")) {
    const belongs = !one.dataset.forms || one.dataset.forms.split(" ").includes(chosen);
    one.hidden = !belongs;
    const input = one.querySelector("input, select, textarea");
    input.disabled = !belongs;
    const needed = (input.dataset.needed || "").split(" ").includes(chosen);
    if (needed) input.setAttribute("aria-required", "true");
    else input.removeAttribute("aria-required");
    one.classList.toggle("needed", needed);
  }
}

/** Give all that is asked, by the names of the service's parameters. */
function parameters() {
  const asked = {};
  for (const [name, text] of new FormData(form)) {
    if (text.trim() && !OURS.has(name)) asked[name] = text.trim();
  }
  if (asked.form === "single_slope") delete asked.form;
  for (const line of others.value.split("\n")) {
    const [name, ...text] = line.split("=");
    if (name.trim()) asked[name.trim()] = text.join("=").trim() || " ";
  }
  return asked;
}

/** Fill the form from the page's address; what has no field goes to the last one. */
function fill() {
  const lines = [];
  for (const [name, text] of new URLSearchParams(location.search)) {
    if (OURS.has(name)) continue;
    const input = name === "form" ? null : field(name);
    if (name === "form" && [...form.elements.form].some((one) => one.value === text)) {
      form.elements.form.value = text;
    } else if (input?.type === "checkbox" && text === "true") {
      input.checked = true;
    } else if (input && input.type !== "checkbox" && takes(input, text)) {
      input.value = text;
    } else {
      lines.push(`${name} = ${text}`);
    }
  }
  others.value = lines.join("\n");
  for (const part of form.querySelectorAll("details")) {
    part.open = [...part.querySelectorAll("input, select, textarea")].some(
      (input) => (input.type === "checkbox" ? input.checked : input.value),
    );
  }
}

function takes(input, text) {
  return input.tagName !== "SELECT" || [...input.options].some((option) => option.value === text);
}

/** Say which sizes are still missing that this form of roof cannot do without. */
function missing() {
  return [...form.querySelectorAll("[aria-required]:enabled")].filter((input) => !input.value.trim());
}

function keepAddress(asked) {
  const here = address(location.pathname, asked, location.href);
  history.replaceState(null, "", here.search || location.pathname);
}

async function plan({ sent = false } = {}) {
  later.never();
  const asked = parameters();
  keepAddress(asked);
  const blank = missing();
  if (blank.length && !sent) {
    plans.drop();
    showNothing(blank);
    return;
  }
  const slow = setTimeout(() => say("Planning …"), 700);
  try {
    const made = await plans.only(async (signal) => (await ask(address("v1/plans", asked), { signal })).json());
    if (made) showPlan(made, asked);
    if (made && sent) byId("plan").focus();
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    showRefusal(refusal, sent);
  } finally {
    clearTimeout(slow);
  }
}

function say(text) {
  byId("status").textContent = text;
}

function showNothing(blank) {
  const filled = [...form.querySelectorAll("input:not([type]):enabled")].some((input) => input.value.trim());
  hidePlan();
  tellFaults([]);
  const names = blank.map((input) => input.labels[0].textContent.toLowerCase());
  say(
    filled
      ? `Still needed: ${names.join(", ")}.`
      : "It comes here as soon as the sizes can be read.",
  );
}

function hidePlan() {
  planned = null;
  pictures.drop();
  byId("planned").hidden = true;
}

function showRefusal(refusal, sent) {
  hidePlan();
  const faults = refusal.errors.length ? refusal.errors : [{ detail: refusal.message }];
  const told = faults.map((fault) => ({ fault, input: field(fault.parameter) || (fault.parameter && others) }));
  if (sent) for (const { input } of told) if (input) left.add(input);
  tellFaults(told.filter(({ input }) => !input || left.has(input)));
  say(`Not planned yet: ${faults.length === 1 ? "one thing" : `${faults.length} things`} to mend.`);
  if (sent) byId("faults").focus();
}

/** Tell faults beside their fields and in a list above them all. */
function tellFaults(told) {
  for (const note of form.querySelectorAll(".error")) note.hidden = true;
  for (const input of form.querySelectorAll("[aria-invalid]")) input.removeAttribute("aria-invalid");
  const list = byId("faults").querySelector("ul");
  list.replaceChildren();
  for (const { fault, input } of told) {
    const words = inWords(fault);
    const name = input && (input === others || input.type === "radio") ? fault.parameter : input?.labels[0].textContent;
    const about = input ? made("a", { href: `#${input.id || "asked"}` }, `${name}: `, words) : words;
    list.append(made("li", {}, about));
    if (!input) continue;
    const note = byId(`${input.id || input.name}-error`);
    note.textContent = note.hidden ? words : `${note.textContent} ${words}`;
    note.hidden = false;
    input.setAttribute("aria-invalid", "true");
    const part = input.closest("details");
    if (part) part.open = true;
  }
  byId("faults").hidden = !told.length;
}

function inWords({ came, wanted, detail }) {
  if (!wanted) return detail;
  return came === "nothing" ? wanted : `came as ${came}; it wants ${wanted}`;
}

function showPlan(made, asked) {
  const kept = planned ? byId("drawing").value : "";
  planned = { plan: made, asked };
  tellFaults([]);
  byId("planned").hidden = false;
  byId("heading").textContent = heading(made);
  byId("order").replaceChildren(orderTable(made));
  byId("findings").replaceChildren(findingList(made, cure));
  byId("cautions").replaceChildren(cautionList(made));
  byId("defers").textContent = DEFERS;
  showSheets(asked);
  offerDrawings(made, kept);
  say(summary(made));
  showPicture(1);
}

/** Offer what puts a finding right, where that is something to write into a field. */
function cure({ changes, place }) {
  if (!changes.length) return null;
  const writes = changes.map((change) => [change.field.replace(/^roof\./, ""), writtenToAsk(change)]);
  const says = writes.map((pair) => pair.join(" = ")).join(", ");
  const button = made("button", { type: "button", "aria-label": `Ask with ${says}, for ${place}` }, `Ask with ${says}`);
  button.addEventListener("click", () => {
    for (const [name, text] of writes) write(name, text);
    byId("plan").focus();
    plan();
  });
  return made("p", {}, button);
}

function writtenToAsk({ values, word }) {
  return word || values.map(asAsked).join(", ");
}

/** Write an amount as the service reads it, with all its digits. */
function asAsked({ value, unit }) {
  if (unit === "rise in 12") return `${value}:12`;
  return unit === "count" || unit === "1" ? `${value}` : `${value} ${unit.replace("_", " ")}`;
}

/** Write a text into the field of a parameter, or as a line of the last one. */
function write(name, text) {
  const input = field(name);
  if (input?.type === "checkbox") input.checked = text === "true";
  else if (input && takes(input, text)) input.value = text;
  else {
    const lines = others.value.split("\n").filter((line) => line.split("=")[0].trim() !== name);
    others.value = [...lines, `${name} = ${text}`].filter((line) => line.trim()).join("\n");
    others.closest("details").open = true;
  }
}

function showSheets(asked) {
  const name = (asked.name || "roof").replace(/[^\p{L}\p{N}]+/gu, "-");
  byId("sheets").replaceChildren(
    ...KEPT.map((format) => {
      const there = address("v1/plans", { ...asked, format });
      const file = `${name}.${ENDINGS[format] || format}`;
      const kept = { href: there, download: format !== "html" && file }; // a page is read where it is
      return made("li", {}, made("a", kept, SHEETS[format] || format));
    }),
    made("li", {}, made("a", { href: address(location.pathname, asked, location.href) }, "Address of this plan")),
  );
}

const ENDINGS = { text: "txt" };

function offerDrawings(plan, kept) {
  const options = [];
  for (const [kind, says, isThere] of DRAWINGS) {
    if (!isThere(plan)) continue;
    options.push(made("option", { value: kind }, says));
  }
  byId("drawing").replaceChildren(...options);
  if (kept && options.some((option) => option.value === kept)) byId("drawing").value = kept;
}

async function showPicture(wanted) {
  const kind = byId("drawing").value;
  const there = address("v1/plans", { ...planned.asked, drawing: kind, page: wanted });
  const before = page;
  page = wanted;
  const status = byId("picture-status");
  status.textContent = "";
  try {
    const text = await pictures.only(async (signal) => (await ask(there, { signal })).text());
    if (text === undefined) return;
    byId("picture").replaceChildren(drawing(text));
    const known = { roof_plan: 1, plane: planned.plan.planes.length }[kind];
    offerPages(wanted < (known ?? Infinity));
    if (wanted > 1) status.textContent = `Page ${wanted}`;
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    const isPast = refusal.errors.some(({ parameter }) => parameter === "page");
    if (isPast) page = before;
    else byId("picture").replaceChildren();
    offerPages(!isPast);
    status.textContent = isPast ? "That was the last page." : refusal.message;
  }
}

function offerPages(more) {
  byId("previous").disabled = page === 1;
  byId("next").disabled = !more;
  for (const id of ["previous", "next"]) byId(id).hidden = page === 1 && !more;
}

const later = settled(plan, 350);

form.addEventListener("input", (event) => {
  if (event.target.name === "form") showFields();
  later();
});
form.addEventListener("change", (event) => {
  left.add(event.target);
  plan();
});
form.addEventListener("submit", (event) => {
  event.preventDefault();
  plan({ sent: true });
});
byId("faults").addEventListener("click", (event) => {
  const link = event.target.closest("a");
  if (!link) return;
  event.preventDefault();
  (byId(link.hash.slice(1)) || form.elements.form[0]).focus();
});
byId("drawing").addEventListener("change", () => showPicture(1));
byId("next").addEventListener("click", () => showPicture(page + 1));
byId("previous").addEventListener("click", () => showPicture(page - 1));

fill();
showFields();
plan();
